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
import type { RunInputDto } from './run-input.dto.js';
import { NoSetupYet, NoShockToRead, NotOwnRun, SessionUnclear, SetupOfOtherBike } from './runs.errors.js';
import { RunsQueries } from './runs.queries.js';
import { sectionTimesOf } from './section-times.js';

type RunRow = Omit<RunEntity, 'createdAt'>;
type ReadingRow = Omit<RingReadingEntity, 'createdAt'>;
type EndReadingRow = Omit<ReadingRow, 'teamId' | 'id' | 'runId'>;

/** A run whose records are at hand. */
export interface KnownRun {
  readonly input: RunInputDto;
  readonly records: RunRecords;
}

/** Runs stored with one statement: few enough that other requests are answered while hit heights are found. */
const BATCH = 20;

/** Logs runs: each with its ring readings and the hit heights behind them, all or nothing. */
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
    const { teamId } = scope;
    const keys = await this.keysOf(transaction, scope, input);
    const records = await this.records.within(transaction, teamId)(keys);
    const readings = this.readingsOf(input, records);
    await this.sessions.lock(transaction, teamId, keys.sessionId);
    const order = await this.queries.nextOrder(transaction, teamId, keys.sessionId, keys.riderId);
    const run = await this.queries.insert(transaction, runRow(scope, input, records, order));
    await this.queries.insertReadings(transaction, ofRun(run, readings));
    if (readings.length > 0) await touchEvidence(transaction, teamId);
    return run;
  }

  /** Holds the readings against the set-up's units, and the times of sections against the track. @throws Refusal that names the field. */
  check(input: RunInputDto, records: RunRecords): void {
    readUnits(input, records);
    sectionTimesOf(input, records.track);
  }

  /** Stores runs that were checked and whose sessions the caller has locked, in their order. */
  async logMany(transaction: Transaction, scope: TeamScope, runs: readonly KnownRun[]): Promise<void> {
    const orders = new Map<string, number>();
    for (let start = 0; start < runs.length; start += BATCH) {
      const rows: RunRow[] = [];
      const readings: ReadingRow[] = [];
      for (const { input, records } of runs.slice(start, start + BATCH)) {
        const order = await this.nextOf(orders, transaction, scope, records);
        const row = runRow(scope, input, records, order);
        rows.push(row);
        readings.push(...ofRun(row, this.readingsOf(input, records)));
      }
      await this.queries.insertMany(transaction, rows);
      await this.queries.insertReadings(transaction, readings);
    }
    await touchEvidence(transaction, scope.teamId);
  }

  private async nextOf(
    orders: Map<string, number>,
    transaction: Transaction,
    { teamId }: TeamScope,
    { session, rider }: RunRecords,
  ): Promise<number> {
    const key = `${session.id} ${rider.id}`;
    const order =
      orders.get(key) ?? (await this.queries.nextOrder(transaction, teamId, session.id, rider.id));
    orders.set(key, order + 1);
    return order;
  }

  private async keysOf(transaction: Transaction, scope: TeamScope, input: RunInputDto): Promise<RunKeys> {
    const bike = await this.records.visibleBike(transaction, scope, input.bikeId);
    const riderId = input.riderId ?? bike.riderId;
    const own = visibleRider(scope);
    if (own && riderId !== own) throw new NotOwnRun();
    const session = await this.sessionOf(transaction, scope.teamId, input);
    const setup = await this.setupOf(transaction, scope, bike, input.setupId);
    return { sessionId: session.id, riderId, bikeId: bike.id, setupId: setup.id };
  }

  private async sessionOf(transaction: Transaction, teamId: string, input: RunInputDto): Promise<Session> {
    if (input.sessionId) return this.sessions.require(transaction, teamId, input.sessionId);
    const { trackId, day, condition = 'dry', airTemperatureC = null } = input;
    if (!trackId || !day) throw new SessionUnclear();
    const wanted = { trackId, day, condition, airTemperatureC };
    return (await this.sessions.ensure(transaction, teamId, wanted)).session;
  }

  private async setupOf(
    transaction: Transaction,
    scope: TeamScope,
    bike: Bike,
    setupId: string | undefined,
  ): Promise<Setup> {
    const setup = setupId
      ? await this.records.visibleSetup(transaction, scope, setupId)
      : await this.records.latestSetup(transaction, scope.teamId, bike.id);
    if (!setup) throw new NoSetupYet();
    if (setup.bikeId !== bike.id) throw new SetupOfOtherBike(setup.id);
    return setup;
  }

  private readingsOf(input: RunInputDto, records: RunRecords): EndReadingRow[] {
    return readUnits(input, records).map(({ end, unit, reading }) => ({
      end,
      ...reading,
      ...this.hitHeights.columns(end, reading, records, unit),
    }));
  }
}

/** What was read off each end that was read, in SI units. @throws Refusal that names the field. */
function readUnits(input: RunInputDto, records: RunRecords) {
  return ENDS.flatMap((end) => {
    const given = input[end];
    if (!given) return [];
    const unit = records.units[end];
    if (!unit) throw new NoShockToRead(given);
    const reading = readingOf(end, given, unit.stroke);
    return reading ? [{ end, unit, reading }] : [];
  });
}

function runRow(
  scope: TeamScope,
  input: RunInputDto,
  { session, track, rider, bike, setup }: RunRecords,
  orderInSession: number,
): RunRow {
  return {
    teamId: scope.teamId,
    id: newId(),
    sessionId: session.id,
    trackId: session.trackId,
    riderId: rider.id,
    bikeId: bike.id,
    setupId: setup.id,
    orderInSession,
    startedAt: input.startedAt ? new Date(input.startedAt) : null,
    time: input.timeS ?? null,
    sectionTimes: sectionTimesOf(input, track),
    forkBottomOuts: input.fork?.bottomOuts ?? null,
    shockBottomOuts: input.shock?.bottomOuts ?? null,
    supportRating: input.ratings?.support ?? null,
    comfortRating: input.ratings?.comfort ?? null,
    rideHeightRating: input.ratings?.rideHeight ?? null,
    fatigueRating: input.ratings?.fatigue ?? null,
    note: input.note ?? '',
    loggedBy: scope.accountId,
    ...voidColumns(input, scope.accountId),
  };
}

const ofRun = (run: { teamId: string; id: string }, readings: readonly EndReadingRow[]): ReadingRow[] =>
  readings.map((reading) => ({ teamId: run.teamId, id: newId(), runId: run.id, ...reading }));

function voidColumns(input: RunInputDto, accountId: string) {
  const { spoilt } = input;
  return {
    voidedAt: spoilt ? new Date() : null,
    voidReason: spoilt?.reason ?? null,
    voidedBy: spoilt ? accountId : null,
    readingsCount: spoilt ? (spoilt.readingsCount ?? false) : true,
  };
}
