import { createHash } from 'node:crypto';
import { DEMAND_MODEL_VERSION } from '@loamledger/evidence';
import { ENGINE_VERSION } from '@loamledger/spring';
import { Injectable } from '@nestjs/common';
import { ComputeThread } from '../../platform/compute/compute-thread.js';
import { newId } from '../../platform/database/new-id.js';
import { needPlaceToCompute } from '../../platform/database/computing-places.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { NotFound } from '../../platform/errors/refusal.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { Blinding } from '../blinding/blinding.js';
import { ClosedPlans } from '../comparisons/closed-plans.js';
import { DemandService } from '../demand/demand.service.js';
import { SetupsService } from '../setups/setups.service.js';
import type { BaselineEntity } from './baseline.entity.js';
import { BaselineRecordsReader, type BaselinePlace } from './baseline-records.js';
import type { BaselineDto, BaselineListDto, BaselineListQuery, BaselineRunsDto } from './baselines.dto.js';
import { BaselinesQueries } from './baselines.queries.js';
import { BASELINES, fingerprintOf, type BaselineRecords, type BaselinesInput } from './compute-baseline.js';
import { answerAsStored } from './stored-answer.js';
import { venueOf } from './venue.js';

/** Offers the baseline of every bike on a track. Each is stored as it was offered, and never changed. */
@Injectable()
export class BaselinesService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: BaselinesQueries,
    private readonly records: BaselineRecordsReader,
    private readonly demand: DemandService,
    private readonly closedPlans: ClosedPlans,
    private readonly setups: SetupsService,
    private readonly computeThread: ComputeThread,
    private readonly blinding: Blinding,
  ) {}

  async list(scope: TeamScope, query: BaselineListQuery): Promise<BaselineListDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const { trackId, bikeId } = query;
      const items = await this.current(transaction, scope, { trackId, bikeId, venue: venueOf(query) });
      const version = createHash('sha256')
        .update(items.map((item) => item.version).join())
        .digest('hex');
      return { items, version: version.slice(0, 32) };
    });
  }

  async get(scope: TeamScope, id: string): Promise<BaselineDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const baseline = await this.queries.require(transaction, scope.teamId, id);
      const own = visibleRider(scope);
      if (own && baseline.riderId !== own) throw new NotFound('baseline', id);
      await this.blinding.refuseHidden(transaction, scope, baseline.bikeId);
      return answer(baseline);
    });
  }

  /** The runs behind a baseline. @throws NotFound also where none were kept. */
  async runs(scope: TeamScope, id: string): Promise<BaselineRunsDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const { evidenceVersion } = await this.queries.require(transaction, scope.teamId, id);
      const kept = await this.queries.keptRuns(transaction, scope.teamId, evidenceVersion);
      if (!kept) throw new NotFound('list of runs behind baseline', id);
      return { evidenceVersion, runIds: kept.runIds };
    });
  }

  /** The baselines that hold now: stored ones where nothing behind them has changed, new ones else. */
  async current(
    transaction: Transaction,
    scope: TeamScope,
    { trackId, bikeId, venue }: BaselinePlace,
  ): Promise<BaselineDto[]> {
    const records = await this.records.onTrack(transaction, scope, { trackId, bikeId, venue });
    let stored = await this.queries.latest(transaction, scope.teamId, trackId, venue);
    let stale = records.filter((record) => !isOffered(record, stored));
    if (stale.length > 0) {
      needPlaceToCompute();
      await this.queries.lockTrack(transaction, scope.teamId, trackId);
      stored = await this.queries.latest(transaction, scope.teamId, trackId, venue);
      stale = records.filter((record) => !isOffered(record, stored));
    }
    const made = stale.length > 0 ? await this.offer(transaction, scope.teamId, trackId, stale) : [];
    return records.flatMap(({ bike }) => {
      const baseline = [...made, ...stored].find((candidate) => candidate.bikeId === bike.id);
      return baseline ? [answer(baseline)] : [];
    });
  }

  /** Computes and stores the baselines of these bikes. */
  private async offer(
    transaction: Transaction,
    teamId: string,
    trackId: string,
    stale: readonly BaselineRecords[],
  ): Promise<BaselineEntity[]> {
    const demand = {
      fork: await this.demand.demand(transaction, teamId, 'fork'),
      shock: await this.demand.demand(transaction, teamId, 'shock'),
    };
    const runIds = [...new Set([...demand.fork.runIds, ...demand.shock.runIds])].sort();
    await this.queries.keepRuns(transaction, teamId, demand.fork.evidenceVersion, runIds);
    const plans = await this.plansWithSetups(transaction, teamId, trackId);
    const answers = await this.computeThread.run(BASELINES, { bikes: stale, demand, ...plans });
    const made: BaselineEntity[] = [];
    for (const [i, records] of stale.entries()) {
      const { bike, rider, setup, venue } = records;
      const baseline = await this.queries.insert(transaction, {
        teamId,
        id: newId(),
        bikeId: bike.id,
        riderId: rider.id,
        trackId,
        setupId: setup?.id ?? null,
        ...venue,
        fingerprint: fingerprintOf(records),
        evidenceVersion: demand.fork.evidenceVersion,
        engineVersion: ENGINE_VERSION,
        modelVersion: DEMAND_MODEL_VERSION,
        runCount: runIds.length,
        answer: answers[i],
      });
      made.push(baseline);
    }
    return made;
  }

  /** What was told apart on time here: closed plans, and the set-ups of their arms. */
  private async plansWithSetups(
    transaction: Transaction,
    teamId: string,
    trackId: string,
  ): Promise<Pick<BaselinesInput, 'plans' | 'planSetups'>> {
    const plans = await this.closedPlans.onTrack(transaction, teamId, trackId);
    const ids = plans.flatMap(({ plan }) => plan.arms.map(({ setupId }) => setupId));
    return { plans, planSetups: await this.setups.byIds(transaction, teamId, ids) };
  }
}

/** Whether the newest stored baseline of the bike rests on just these records. */
const isOffered = (record: BaselineRecords, stored: readonly BaselineEntity[]): boolean =>
  stored.find(({ bikeId }) => bikeId === record.bike.id)?.fingerprint === fingerprintOf(record);

const answer = (baseline: BaselineEntity): BaselineDto => ({
  id: baseline.id,
  computedAt: baseline.createdAt.toISOString(),
  bikeId: baseline.bikeId,
  riderId: baseline.riderId,
  trackId: baseline.trackId,
  setupId: baseline.setupId,
  ...answerAsStored(baseline.answer),
  runCount: baseline.runCount,
  engineVersion: baseline.engineVersion,
  modelVersion: baseline.modelVersion,
  evidenceVersion: baseline.evidenceVersion,
  version: baseline.fingerprint,
});
