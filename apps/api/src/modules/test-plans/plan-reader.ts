import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { NotFound } from '../../platform/errors/refusal.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { StoredRuns, type Run } from '../runs/stored-runs.js';
import type { Plan } from './plan-answer.js';
import type { PlannedRunEntity } from './planned-run.entity.js';
import { PlanClosed } from './test-plans.errors.js';
import { TestPlansQueries } from './test-plans.queries.js';

/** A run that was logged for a plan, with its place in it. */
export interface LoggedPlanRun {
  readonly run: Run;
  readonly letter: string;
  readonly kind: PlannedRunEntity['kind'];
}

/** Reads plans as far as the member may see them. */
@Injectable()
export class PlanReader {
  constructor(
    private readonly queries: TestPlansQueries,
    private readonly runs: StoredRuns,
  ) {}

  /** The plan; a rider sees those that they ride in. @throws NotFound */
  async visible(transaction: Transaction, scope: TeamScope, id: string): Promise<Plan> {
    const row = await this.queries.require(transaction, scope.teamId, id);
    const own = visibleRider(scope);
    if (own && (await this.queries.standingRuns(transaction, scope.teamId, id, own)).length === 0) {
      throw new NotFound('test plan', id);
    }
    return { row, arms: await this.queries.armsOf(transaction, scope.teamId, id) };
  }

  /** The plan while others who would change it wait. @throws NotFound, PlanClosed */
  async open(transaction: Transaction, scope: TeamScope, id: string): Promise<Plan> {
    await this.queries.lock(transaction, scope.teamId, id);
    const plan = await this.visible(transaction, scope, id);
    if (plan.row.closedAt) throw new PlanClosed();
    return plan;
  }

  /** The plans on a track that are closed, oldest first. */
  async closedOn(transaction: Transaction, teamId: string, trackId: string): Promise<Plan[]> {
    const rows = await this.queries.all(transaction, teamId, { trackId });
    const plans: Plan[] = [];
    for (const row of rows.filter(({ closedAt }) => closedAt !== null)) {
      plans.push({ row, arms: await this.queries.armsOf(transaction, teamId, row.id) });
    }
    return plans;
  }

  /** Every run that was logged for the plan, in the order of logging. */
  async loggedRuns(transaction: Transaction, { row, arms }: Plan): Promise<LoggedPlanRun[]> {
    const standing = await this.queries.standingRuns(transaction, row.teamId, row.id);
    const runs = await this.storedOf(transaction, row.teamId, standing);
    const letters = new Map(arms.map(({ id, letter }) => [id, letter]));
    return standing
      .flatMap(({ runId, armId, kind }) => {
        const run = runs.get(runId ?? '');
        return run ? [{ run, letter: letters.get(armId) ?? '', kind }] : [];
      })
      .sort((a, b) => (a.run.id < b.run.id ? -1 : 1));
  }

  /** The stored runs behind planned ones, by their ids. */
  storedOf(
    transaction: Transaction,
    teamId: string,
    planned: readonly PlannedRunEntity[],
  ): Promise<Map<string, Run>> {
    const ids = planned.flatMap(({ runId }) => (runId === null ? [] : [runId]));
    return this.runs.byIds(transaction, teamId, ids);
  }
}
