import { Injectable } from '@nestjs/common';
import { In, IsNull, type FindOptionsWhere } from 'typeorm';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import { PlannedRunEntity } from './planned-run.entity.js';
import { TestPlanArmEntity } from './test-plan-arm.entity.js';
import { TestPlanEntity } from './test-plan.entity.js';

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
