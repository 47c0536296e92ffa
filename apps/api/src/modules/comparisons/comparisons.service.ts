import { Injectable } from '@nestjs/common';
import { ComputeThread } from '../../platform/compute/compute-thread.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { BikesService } from '../bikes/bikes.service.js';
import { Blinding } from '../blinding/blinding.js';
import { StoredRuns } from '../runs/stored-runs.js';
import { PastRuns } from '../scatter/past-runs.js';
import { SessionsService } from '../sessions/sessions.service.js';
import { SetupsService } from '../setups/setups.service.js';
import { isBlindTo } from '../test-plans/plan-answer.js';
import { PlanReader } from '../test-plans/plan-reader.js';
import { TracksService } from '../tracks/tracks.service.js';
import { ratedRun, shownArm, shownSetup, wishOf } from './compared.js';
import { comparisonAnswer, type ComparisonFrame } from './comparison-answer.js';
import type { ComparisonQuery } from './comparison-query.dto.js';
import type { ComparisonDto } from './comparison.dto.js';
import { BlindUntilClosed, LookedAtTheEnd } from './comparisons.errors.js';
import { COMPARE, type ComparisonWish } from './compute-comparison.js';
import { lookAt, type PlanLook } from './plan-look.js';

const PER_CENT = 100;
/** Of time, where nobody has set one. */
const DEFAULT_MARGIN_PCT = 1;
const RATED_KNOWINGLY = 'Riders knew what they rode: ratings may follow what they expected.';
const CHOSEN_AFTERWARDS =
  'These set-ups were chosen after they were ridden: take a verdict as a hint, and plan a test of it.';

/** Compares set-ups on time and on feel: the arms of a plan, or set-ups chosen afterwards. */
@Injectable()
export class ComparisonsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly plans: PlanReader,
    private readonly runs: StoredRuns,
    private readonly pastRuns: PastRuns,
    private readonly bikes: BikesService,
    private readonly setups: SetupsService,
    private readonly sessions: SessionsService,
    private readonly tracks: TracksService,
    private readonly computeThread: ComputeThread,
    private readonly blinding: Blinding,
  ) {}

  /** The comparison of a plan's arms, as far as it may be looked at now. */
  async ofPlan(scope: TeamScope, planId: string): Promise<ComparisonDto> {
    return this.compute(scope, async (transaction) => {
      const plan = await this.plans.visible(transaction, scope, planId);
      const { row } = plan;
      if (isBlindTo(scope, row)) throw new BlindUntilClosed();
      if (row.looks === 'at the end' && row.closedAt === null) throw new LookedAtTheEnd();
      const look = lookAt(plan, await this.plans.loggedRuns(transaction, plan));
      return {
        planId,
        shown: shownArm(plan),
        sentences: [...lookSentences(look), ...(row.blind ? [] : [RATED_KNOWINGLY])],
        wish: wishOf(plan, look),
      };
    });
  }

  /** The comparison of set-ups of a bike that were ridden on a track. */
  async ofSetups(scope: TeamScope, query: ComparisonQuery): Promise<ComparisonDto> {
    return this.compute(scope, async (transaction) => {
      const { bikeId, trackId, sessionId, currentSetupId, setupId } = query;
      await this.requireRecords(transaction, scope, query);
      const filter = { bikeId, trackId, ...(sessionId ? { sessionId } : {}) };
      const own = visibleRider(scope);
      const ridden = await this.runs.ofBike(transaction, scope.teamId, filter);
      const wanted = ridden
        .filter((run) => own === null || run.riderId === own)
        .filter((run) => !setupId || run.setupId === setupId || run.setupId === currentSetupId);
      return {
        planId: null,
        shown: shownSetup,
        sentences: [CHOSEN_AFTERWARDS, RATED_KNOWINGLY],
        wish: {
          runs: wanted.map((run) => ratedRun(run, run.setupId)),
          current: currentSetupId,
          margin: (query.marginPct ?? DEFAULT_MARGIN_PCT) / PER_CENT,
          trend: query.trend ?? 'linear',
          look: null,
        },
      };
    });
  }

  private async requireRecords(
    transaction: Transaction,
    scope: TeamScope,
    { bikeId, trackId, sessionId, currentSetupId, setupId }: ComparisonQuery,
  ): Promise<void> {
    const { teamId } = scope;
    await this.bikes.requireVisible(transaction, scope, bikeId);
    await this.blinding.refuseHidden(transaction, scope, bikeId);
    await this.tracks.require(transaction, teamId, trackId);
    if (sessionId) await this.sessions.require(transaction, teamId, sessionId);
    await this.setups.requireVisible(transaction, scope, currentSetupId);
    if (setupId) await this.setups.requireVisible(transaction, scope, setupId);
  }

  /** Reads in a transaction, computes outside of it: nobody waits for a connection meanwhile. */
  private async compute(
    scope: TeamScope,
    read: (
      transaction: Transaction,
    ) => Promise<
      Omit<ComparisonFrame, 'wish' | 'onlyRider'> & { readonly wish: Omit<ComparisonWish, 'pastRuns'> }
    >,
  ): Promise<ComparisonDto> {
    const frame = await this.database.inTeam(scope, async (transaction) => {
      const { wish, ...rest } = await read(transaction);
      const sessions = [...new Set(wish.runs.map(({ session }) => session))];
      const pastRuns = await this.pastRuns.besides(transaction, scope.teamId, sessions);
      return { ...rest, onlyRider: visibleRider(scope), wish: { ...wish, pastRuns } };
    });
    return comparisonAnswer(frame, await this.computeThread.run(COMPARE, frame.wish));
  }
}

function lookSentences({ look, waiting }: PlanLook): string[] {
  if (look === null) return [];
  const which = `Look ${look.number} of ${look.of ?? 'many'}: the error rate is spent over all looks.`;
  if (waiting === 0) return [which];
  const runs = waiting === 1 ? '1 run waits' : `${waiting} runs wait`;
  return [which, `${runs} for the block to be whole.`];
}
