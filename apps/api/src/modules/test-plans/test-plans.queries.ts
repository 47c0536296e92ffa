import { Injectable } from '@nestjs/common';
import { In, IsNull, Not, type FindOptionsWhere } from 'typeorm';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import type { PlanState } from './plan-states.js';
import { PlannedRunEntity } from './planned-run.entity.js';
import { TestPlanArmEntity } from './test-plan-arm.entity.js';
import { TestPlanEntity } from './test-plan.entity.js';

/** How far one rider of a plan is. */
export interface RiderStanding {
  readonly planId: string;
  readonly riderId: string;
  readonly bikeId: string;
  /** Counted runs, void ones left out. */
  readonly ridden: number;
  readonly left: number;
}

@Injectable()
export class TestPlansQueries extends TeamRows<TestPlanEntity> {
  constructor() {
    super(TestPlanEntity, 'test plan');
  }

  /** The filter of plans that the rider rides in. */
  async ofRider(
    transaction: Transaction,
    teamId: string,
    riderId: string,
  ): Promise<FindOptionsWhere<TestPlanEntity>> {
    const rows: { planId: string }[] = await transaction.query(
      `select distinct plan_id as "planId" from planned_run where team_id = $1 and rider_id = $2`,
      [teamId, riderId],
    );
    return { id: In(rows.map(({ planId }) => planId)) };
  }

  /** The filter of plans that are open, or closed. */
  inState(state: PlanState): FindOptionsWhere<TestPlanEntity> {
    return { closedAt: state === 'open' ? IsNull() : Not(IsNull()) };
  }

  /** How far the riders of these plans are, or one of them. */
  async standingsOf(
    transaction: Transaction,
    teamId: string,
    planIds: readonly string[],
    riderId: string | null,
  ): Promise<RiderStanding[]> {
    return transaction.query(
      `select planned.plan_id as "planId", planned.rider_id as "riderId", arm.bike_id as "bikeId",
              count(*) filter (where planned.kind = 'counted' and run.id is not null
                               and run.voided_at is null)::int as ridden,
              count(*) filter (where planned.kind = 'counted' and planned.run_id is null)::int as "left"
       from planned_run planned
       join test_plan_arm arm on arm.team_id = planned.team_id and arm.id = planned.arm_id
       left join run on run.team_id = planned.team_id and run.id = planned.run_id
       where planned.team_id = $1 and planned.plan_id = any ($2::uuid[]) and planned.dropped_at is null
         and ($3::uuid is null or planned.rider_id = $3)
       group by planned.plan_id, planned.rider_id, arm.bike_id
       order by planned.rider_id`,
      [teamId, planIds, riderId],
    );
  }

  /** Makes others who would change the plan wait for the end of this transaction. */
  async lock(transaction: Transaction, teamId: string, id: string): Promise<void> {
    await transaction.query('select from test_plan where team_id = $1 and id = $2 for no key update', [
      teamId,
      id,
    ]);
  }

  async insertArms(
    transaction: Transaction,
    arms: readonly Omit<TestPlanArmEntity, 'createdAt'>[],
  ): Promise<void> {
    await transaction.insert(TestPlanArmEntity, [...arms]);
  }

  async armsOf(transaction: Transaction, teamId: string, planId: string): Promise<TestPlanArmEntity[]> {
    return transaction.find(TestPlanArmEntity, { where: { teamId, planId }, order: { id: 'ASC' } });
  }

  async insertRuns(
    transaction: Transaction,
    runs: readonly Omit<PlannedRunEntity, 'createdAt'>[],
  ): Promise<void> {
    if (runs.length > 0) await transaction.insert(PlannedRunEntity, [...runs]);
  }

  /** The runs that stand, in the order of their places; those that a new order replaced are left out. */
  async standingRuns(
    transaction: Transaction,
    teamId: string,
    planId: string,
    riderId?: string,
  ): Promise<PlannedRunEntity[]> {
    const rider = riderId ? { riderId } : {};
    return transaction.find(PlannedRunEntity, {
      where: { teamId, planId, droppedAt: IsNull(), ...rider },
      order: { riderId: 'ASC', position: 'ASC', id: 'ASC' },
    });
  }

  async attachRun(transaction: Transaction, teamId: string, id: string, runId: string): Promise<void> {
    await transaction.update(PlannedRunEntity, { teamId, id }, { runId });
  }

  async dropRuns(transaction: Transaction, teamId: string, ids: readonly string[]): Promise<void> {
    if (ids.length === 0) return;
    await transaction.update(PlannedRunEntity, { teamId, id: In([...ids]) }, { droppedAt: new Date() });
  }
}
