import { AccountEntity } from '../../modules/accounts/account.entity.js';
import { SignInEntity } from '../../modules/accounts/sign-in.entity.js';
import { BaselineRunsEntity } from '../../modules/baselines/baseline-runs.entity.js';
import { SignInTryEntity } from '../../modules/accounts/sign-in-try.entity.js';
import { ApiTokenEntity } from '../../modules/api-tokens/api-token.entity.js';
import { AuditEntryEntity } from '../../modules/audit/audit-entry.entity.js';
import { BaselineEntity } from '../../modules/baselines/baseline.entity.js';
import { BikeEntity } from '../../modules/bikes/bike.entity.js';
import { DecisionEntity } from '../../modules/decisions/decision.entity.js';
import { DemandFitEntity } from '../../modules/demand/demand-fit.entity.js';
import { PlannedSessionEntity } from '../../modules/planned-sessions/planned-session.entity.js';
import { RiderEntity } from '../../modules/riders/rider.entity.js';
import { RingReadingEntity } from '../../modules/runs/ring-reading.entity.js';
import { RunEntity } from '../../modules/runs/run.entity.js';
import { SessionEntity } from '../../modules/sessions/session.entity.js';
import { SetupEntity } from '../../modules/setups/setup.entity.js';
import { SpacerMovementEntity } from '../../modules/spacers/spacer-movement.entity.js';
import { SpringUnitEntity } from '../../modules/spring-units/spring-unit.entity.js';
import { FormerMemberEntity } from '../../modules/team-archive/former-member.entity.js';
import { InvitationEntity } from '../../modules/teams/invitation.entity.js';
import { MemberEntity } from '../../modules/teams/member.entity.js';
import { SignInLinkEntity } from '../../modules/teams/sign-in-link.entity.js';
import { TeamEntity } from '../../modules/teams/team.entity.js';
import { PlannedRunEntity } from '../../modules/test-plans/planned-run.entity.js';
import { TestPlanArmEntity } from '../../modules/test-plans/test-plan-arm.entity.js';
import { TestPlanEntity } from '../../modules/test-plans/test-plan.entity.js';
import { TrackEntity } from '../../modules/tracks/track.entity.js';
import { ServiceEntryEntity } from '../../modules/unit-service/service-entry.entity.js';
import { UnitCareEntity } from '../../modules/unit-service/unit-care.entity.js';
import { WorkOrderEntity } from '../../modules/work-orders/work-order.entity.js';
import { WorkStepEntity } from '../../modules/work-orders/work-step.entity.js';
import { IdempotencyEntity } from './idempotency.entity.js';

/** Every table of the schema. */
export const ENTITIES = [
  AccountEntity,
  ApiTokenEntity,
  AuditEntryEntity,
  BaselineEntity,
  BaselineRunsEntity,
  BikeEntity,
  DecisionEntity,
  DemandFitEntity,
  FormerMemberEntity,
  IdempotencyEntity,
  InvitationEntity,
  MemberEntity,
  PlannedRunEntity,
  PlannedSessionEntity,
  RiderEntity,
  RingReadingEntity,
  RunEntity,
  ServiceEntryEntity,
  SessionEntity,
  SetupEntity,
  SignInEntity,
  SignInLinkEntity,
  SignInTryEntity,
  SpacerMovementEntity,
  SpringUnitEntity,
  TeamEntity,
  TestPlanArmEntity,
  TestPlanEntity,
  TrackEntity,
  UnitCareEntity,
  WorkOrderEntity,
  WorkStepEntity,
];
