import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { PastRuns } from '../scatter/past-runs.js';
import type { Plan } from '../test-plans/plan-answer.js';
import { PlanReader } from '../test-plans/plan-reader.js';
import { wishOf } from './compared.js';
import type { ComparisonWish } from './compute-comparison.js';
import { lookAt } from './plan-look.js';

/** A closed plan with what there is to compare. Plain data. */
export interface ClosedPlan {
  readonly plan: Plan;
  readonly wish: ComparisonWish;
}

/** Plans that are over: their verdicts stand, and reading them spends no error rate. */
@Injectable()
export class ClosedPlans {
  constructor(
    private readonly plans: PlanReader,
    private readonly pastRuns: PastRuns,
  ) {}

  /** All on a track, oldest first. */
  async onTrack(transaction: Transaction, teamId: string, trackId: string): Promise<ClosedPlan[]> {
    const closed: ClosedPlan[] = [];
    for (const plan of await this.plans.closedOn(transaction, teamId, trackId)) {
      const wish = wishOf(plan, lookAt(plan, await this.plans.loggedRuns(transaction, plan)));
      const sessions = [...new Set(wish.runs.map(({ session }) => session))];
      const pastRuns = await this.pastRuns.besides(transaction, teamId, sessions);
      closed.push({ plan, wish: { ...wish, pastRuns } });
    }
    return closed;
  }
}
