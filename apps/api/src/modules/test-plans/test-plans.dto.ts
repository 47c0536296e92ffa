import {
  ChoiceField,
  DayField,
  FlagField,
  IdField,
  MomentField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { PageQuery, pageOf } from '../../platform/http/page.js';
import { VersionField } from '../../platform/http/version-field.js';
import { LOOKS, type Looks } from './looks.js';
import { PLAN_STATES, type PlanState } from './plan-states.js';
import { PlannedRunDto } from './planned-run.dto.js';
import { PlanPrecisionDto, PlanStatementDto } from './plan-statement.dto.js';
import { ArmSetupDto, PlanRiderDto, TRENDS } from './test-plan-input.dto.js';

export class PlanArmDto {
  @TextField({ description: 'The letter drawn for the arm.', maxLength: 1, example: 'B' })
  letter: string;

  @TextField({
    description: 'What is tried; null for a rider while a blind plan is open.',
    maxLength: 100,
    example: 'One spacer more',
    nullable: true,
  })
  name: string | null;

  @FlagField({
    description: 'Whether the others are compared with it; null for a rider while a blind plan is open.',
    example: false,
    nullable: true,
  })
  current: boolean | null;

  @PartsField({
    description: 'Its set-up on each bike; empty for a rider while a blind plan is open.',
    type: () => ArmSetupDto,
    maxItems: 20,
  })
  setups: ArmSetupDto[];
}

/** Who rides which bike, and how far. */
export class PlanRiderStandingDto extends PlanRiderDto {
  @NumberField({
    description: 'Counted runs ridden; void ones and warm-ups are left out.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e4,
    example: 4,
  })
  ridden: number;

  @NumberField({
    description: 'Counted runs still to ride.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e4,
    example: 4,
  })
  left: number;
}

/** A plan in a list. */
export class TestPlanSummaryDto {
  @IdField({ description: 'The plan.' })
  id: string;

  @TextField({ description: 'What it is to tell.', maxLength: 200, example: 'Does one spacer more help?' })
  name: string;

  @IdField({ description: 'The track.' })
  trackId: string;

  @IdField({ description: 'The session that all runs belong to; null: any on the track.', nullable: true })
  sessionId: string | null;

  @DayField({ description: 'The day it is meant for, if for one.', example: '2026-05-09', nullable: true })
  day: string | null;

  @FlagField({ description: 'Whether riders see letters only until it is closed.', example: true })
  blind: boolean;

  @PartsField({
    description: 'Who rides which bike, and how far. A rider sees their own place.',
    type: () => PlanRiderStandingDto,
    maxItems: 20,
  })
  riders: PlanRiderStandingDto[];

  @MomentField({ description: 'When it was made.', example: '2026-05-08T18:30:00Z' })
  createdAt: string;

  @MomentField({
    description: 'When it was closed; null: it is open.',
    example: '2026-05-09T16:30:00Z',
    nullable: true,
  })
  closedAt: string | null;
}

export class TestPlanDto extends TestPlanSummaryDto {
  @NumberField({
    description: 'Difference of time worth acting on.',
    unit: '% of time',
    minimum: 0.1,
    maximum: 20,
    example: 1,
  })
  marginPct: number;

  @ChoiceField({
    description: 'Trend over the session that is taken out.',
    choices: TRENDS,
    example: 'linear',
  })
  trend: (typeof TRENDS)[number];

  @ChoiceField({ description: 'When the times are looked at.', choices: LOOKS })
  looks: Looks;

  @NumberField({
    description: 'Runs of each rider before the first counted one.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 10,
    example: 1,
  })
  warmUps: number;

  @NumberField({
    description: 'Counted runs of each arm by each rider.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 20,
    example: 4,
  })
  runsAnArm: number;

  @NumberField({
    description: 'The same seed gives the same plan; null for a rider while a blind plan is open.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 2_147_483_647,
    example: 20_260_509,
    nullable: true,
  })
  seed: number | null;

  @PartsField({ description: 'The arms, by letter.', type: () => PlanArmDto, maxItems: 8 })
  arms: PlanArmDto[];

  @PartsField({
    description: 'The runs that stand, for each rider in their order. A rider sees their own.',
    type: () => PlannedRunDto,
    maxItems: 5_000,
  })
  runs: PlannedRunDto[];

  @PartField({ description: 'How precise the order is.', type: () => PlanPrecisionDto })
  precision: PlanPrecisionDto;

  @PartField({
    description: 'What the plan can tell, said before the first run and never changed.',
    type: () => PlanStatementDto,
  })
  statement: PlanStatementDto;

  @IdField({ description: 'The account that made it.' })
  createdBy: string;

  @TextField({
    description: 'Why it was closed; null: it is open.',
    minLength: 0,
    maxLength: 1_000,
    example: 'All runs ridden.',
    nullable: true,
  })
  closingNote: string | null;

  @VersionField()
  version: number;
}

export class TestPlanPageDto extends pageOf(TestPlanSummaryDto) {}

export class TestPlanListQuery extends PageQuery {
  @IdField({ description: 'Only plans on this track.', optional: true })
  trackId?: string;

  @ChoiceField({ description: 'Only open plans, or only closed ones.', choices: PLAN_STATES, optional: true })
  state?: PlanState;
}
