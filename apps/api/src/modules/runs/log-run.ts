import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import { touchEvidence } from '../../platform/database/evidence-version.js';
import type { Transaction } from '../../platform/database/team-database.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import type { Bike } from '../bikes/bikes.service.js';
import { SessionsService, type Session } from '../sessions/sessions.service.js';
import type { Setup } from '../setups/setups.service.js';
import { ENDS } from '../suspension/end-inputs.js';
import { HitHeights } from './hit-heights.js';
import { readingOf } from './reading-input.js';
import type { RingReadingEntity } from './ring-reading.entity.js';
import { RunRecordsReader, type RunKeys, type RunRecords } from './run-records.js';
import type { RunEntity } from './run.entity.js';
import type { RunInputDto } from './runs.dto.js';
import { NoSetupYet, NoShockToRead, NotOwnRun, SessionUnclear, SetupOfOtherBike } from './runs.errors.js';
import { RunsQueries } from './runs.queries.js';

type EndReadingRow = Omit<RingReadingEntity, 'teamId' | 'id' | 'createdAt' | 'runId'>;

/** Logs one run: the run, its ring readings and the hit heights behind them, all or nothing. */
@Injectable()
export class LogRun {
  constructor(
    private readonly queries: RunsQueries,
    private readonly hitHeights: HitHeights,
    private readonly records: RunRecordsReader,
    private readonly sessions: SessionsService,
  ) {}

  /** Stores the run and returns it. @throws Refusal that names the field. */
  async log(transaction: Transaction, scope: TeamScope, input: RunInputDto): Promise<RunEntity> {
    const keys = await this.keysOf(transaction, scope, input);
    const records = await this.records.within(transaction, scope.teamId)(keys);
    const readings = this.readingsOf(input, records);
    await this.sessions.lock(transaction, scope.teamId, keys.sessionId);
    const run = await this.insert(transaction, scope, input, records, readings);
    if (readings.length > 0) await touchEvidence(transaction, scope.teamId);
    return run;
  }

  /**
   * Stores one of many runs whose records are at hand. The caller has locked the session, and says at the end that
   * the evidence has changed. @throws Refusal that names the field.
   */
  async logOneOfMany(
    transaction: Transaction,
    scope: TeamScope,
    input: RunInputDto,
    records: RunRecords,
  ): Promise<void> {
    await this.insert(transaction, scope, input, records, this.readingsOf(input, records));
  }

  private async insert(
    transaction: Transaction,
    scope: TeamScope,
    input: RunInputDto,
    { session, rider, bike, setup }: RunRecords,
    readings: readonly EndReadingRow[],
  ): Promise<RunEntity> {
    const run = await this.queries.insert(transaction, {
      teamId: scope.teamId,
      id: newId(),
      sessionId: session.id,
      trackId: session.trackId,
      riderId: rider.id,
      bikeId: bike.id,
      setupId: setup.id,
      orderInSession: await this.queries.nextOrder(transaction, scope.teamId, session.id, rider.id),
      startedAt: input.startedAt ? new Date(input.startedAt) : null,
      time: input.timeS ?? null,
      forkBottomOuts: input.fork?.bottomOuts ?? null,
      shockBottomOuts: input.shock?.bottomOuts ?? null,
      supportRating: input.ratings?.support ?? null,
      comfortRating: input.ratings?.comfort ?? null,
      rideHeightRating: input.ratings?.rideHeight ?? null,
      fatigueRating: input.ratings?.fatigue ?? null,
      note: input.note ?? '',
      loggedBy: scope.accountId,
      ...voidColumns(input, scope.accountId),
    });
    await this.queries.insertReadings(
      transaction,
      readings.map((reading) => ({ teamId: scope.teamId, id: newId(), runId: run.id, ...reading })),
    );
    return run;
  }

  private async keysOf(transaction: Transaction, scope: TeamScope, input: RunInputDto): Promise<RunKeys> {
    const bike = await this.records.visibleBike(transaction, scope, input.bikeId);
    const riderId = input.riderId ?? bike.riderId;
    const own = visibleRider(scope);
    if (own && riderId !== own) throw new NotOwnRun();
    const session = await this.sessionOf(transaction, scope.teamId, input);
    const setup = await this.setupOf(transaction, scope.teamId, bike, input.setupId);
    return { sessionId: session.id, riderId, bikeId: bike.id, setupId: setup.id };
  }

  private async sessionOf(transaction: Transaction, teamId: string, input: RunInputDto): Promise<Session> {
    if (input.sessionId) return this.sessions.require(transaction, teamId, input.sessionId);
    const { trackId, day, condition = 'dry', airTemperatureC = null } = input;
    if (!trackId || !day) throw new SessionUnclear();
    return this.sessions.ensure(transaction, teamId, { trackId, day, condition, airTemperatureC });
  }

  private async setupOf(
    transaction: Transaction,
    teamId: string,
    bike: Bike,
    setupId: string | undefined,
  ): Promise<Setup> {
    const setup = setupId
      ? await this.records.setup(transaction, teamId, setupId)
      : await this.records.latestSetup(transaction, teamId, bike.id);
    if (!setup) throw new NoSetupYet();
    if (setup.bikeId !== bike.id) throw new SetupOfOtherBike(setup.id);
    return setup;
  }

  private readingsOf(input: RunInputDto, records: RunRecords): EndReadingRow[] {
    return ENDS.flatMap((end) => {
      const given = input[end];
      if (!given) return [];
      const unit = records.units[end];
      if (!unit) throw new NoShockToRead(given);
      const reading = readingOf(end, given, unit.stroke);
      return reading ? { end, ...reading, ...this.hitHeights.columns(end, reading, records, unit) } : [];
    });
  }
}

function voidColumns(input: RunInputDto, accountId: string) {
  if (!input.spoilt) return {};
  return {
    voidedAt: new Date(),
    voidReason: input.spoilt.reason,
    voidedBy: accountId,
    readingsCount: input.spoilt.readingsCount ?? false,
  };
}
