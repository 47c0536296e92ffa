import { Injectable } from '@nestjs/common';
import { In, IsNull, Not } from 'typeorm';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import type { Condition } from '../sessions/conditions.js';
import type { End } from '../suspension/end-inputs.js';
import { RingReadingEntity, type HitKind } from './ring-reading.entity.js';
import { RunEntity } from './run.entity.js';

/** A reading that the demand model may use, with the run it comes from. */
export interface CountingReading {
  readonly runId: string;
  readonly riderId: string;
  readonly trackId: string;
  readonly logHeight: number;
  readonly hitKind: HitKind;
  readonly logSd: number;
  /** The ground of its session. */
  readonly condition: Condition;
}

/** A reading on a track as a picture shows it: voided ones too. */
export interface TrackReading extends CountingReading {
  readonly bikeId: string;
  readonly day: string;
  readonly voided: boolean;
  readonly counts: boolean;
}

/** A reading whose hit height is to be found again, with where its run's records are. */
interface StaleReading extends Pick<RunEntity, 'sessionId' | 'riderId' | 'bikeId' | 'setupId'> {
  readonly id: string;
  readonly end: End;
  readonly travelUsed: number;
  readonly readingSd: number;
}

@Injectable()
export class RunsQueries extends TeamRows<RunEntity> {
  constructor() {
    super(RunEntity, 'run');
  }

  async readingsOf(
    transaction: Transaction,
    teamId: string,
    runIds: readonly string[],
  ): Promise<RingReadingEntity[]> {
    if (runIds.length === 0) return [];
    return transaction.find(RingReadingEntity, { where: { teamId, runId: In([...runIds]) } });
  }

  /** Runs on these set-ups, oldest first. */
  onSetups(transaction: Transaction, teamId: string, setupIds: readonly string[]): Promise<RunEntity[]> {
    return this.all(transaction, teamId, { setupId: In([...setupIds]) });
  }

  /** When runs of the bike started, s since 1970, within a second of one of these moments. */
  async startsOf(
    transaction: Transaction,
    teamId: string,
    bikeId: string,
    moments: readonly number[],
  ): Promise<number[]> {
    if (moments.length === 0) return [];
    const rows: { at: number }[] = await transaction.query(
      `select extract(epoch from started_at)::float8 as at from run
       where team_id = $1 and bike_id = $2
         and exists (select from unnest($3::float8[]) as moment
                     where started_at between to_timestamp(moment - 1) and to_timestamp(moment + 1))`,
      [teamId, bikeId, moments],
    );
    return rows.map(({ at }) => at);
  }

  async insertMany(transaction: Transaction, runs: readonly Omit<RunEntity, 'createdAt'>[]): Promise<void> {
    if (runs.length > 0) await transaction.insert(RunEntity, [...runs]);
  }

  async insertReadings(transaction: Transaction, readings: Partial<RingReadingEntity>[]): Promise<void> {
    if (readings.length > 0) await transaction.insert(RingReadingEntity, readings as never);
  }

  /** Makes another import into the team wait for the end of this transaction. */
  async lockImports(transaction: Transaction, teamId: string): Promise<void> {
    await transaction.query(`select pg_advisory_xact_lock(hashtextextended('import ' || $1, 0))`, [teamId]);
  }

  /** The number of the rider's next run in the session. */
  async nextOrder(
    transaction: Transaction,
    teamId: string,
    sessionId: string,
    riderId: string,
  ): Promise<number> {
    const rows: { next: number }[] = await transaction.query(
      `select coalesce(max(order_in_session), 0) + 1 as next from run
       where team_id = $1 and session_id = $2 and rider_id = $3`,
      [teamId, sessionId, riderId],
    );
    return rows[0]?.next ?? 1;
  }

  async setVoid(
    transaction: Transaction,
    teamId: string,
    id: string,
    columns: Pick<RunEntity, 'voidedAt' | 'voidReason' | 'voidedBy' | 'readingsCount'>,
  ): Promise<void> {
    await transaction.update(RunEntity, { teamId, id }, columns);
  }

  /** Every reading of one end that counts, in the order of the runs. */
  async countingReadings(transaction: Transaction, teamId: string, end: End): Promise<CountingReading[]> {
    return transaction.query(
      `select run.id as "runId", run.rider_id as "riderId", run.track_id as "trackId",
              reading.log_height as "logHeight", reading.hit_kind as "hitKind", reading.log_sd as "logSd",
              session.condition
       from ring_reading reading
       join run on run.team_id = reading.team_id and run.id = reading.run_id
       join session on session.team_id = run.team_id and session.id = run.session_id
       where reading.team_id = $1 and reading."end" = $2 and reading.hit_kind is not null
         and (run.voided_at is null or run.readings_count)
       order by run.id`,
      [teamId, end],
    );
  }

  /** Every reading of one end on a track, of one rider or of all, voided ones too. */
  async trackReadings(
    transaction: Transaction,
    teamId: string,
    filter: { end: End; trackId: string; riderId: string | null },
  ): Promise<TrackReading[]> {
    return transaction.query(
      `select run.id as "runId", run.rider_id as "riderId", run.track_id as "trackId", run.bike_id as "bikeId",
              to_char(session.day, 'YYYY-MM-DD') as day,
              run.voided_at is not null as voided, run.voided_at is null or run.readings_count as counts,
              reading.log_height as "logHeight", reading.hit_kind as "hitKind", reading.log_sd as "logSd",
              session.condition
       from ring_reading reading
       join run on run.team_id = reading.team_id and run.id = reading.run_id
       join session on session.team_id = run.team_id and session.id = run.session_id
       where reading.team_id = $1 and reading."end" = $2 and run.track_id = $3 and reading.hit_kind is not null
         and ($4::uuid is null or run.rider_id = $4)
       order by run.id`,
      [teamId, filter.end, filter.trackId, filter.riderId],
    );
  }

  /** Timed runs that count, of the newest sessions but these, oldest first. */
  async timedOfOtherSessions(
    transaction: Transaction,
    teamId: string,
    excluded: readonly string[],
    sessions: number,
  ): Promise<RunEntity[]> {
    const newest: { id: string }[] = await transaction.query(
      `select session.id from session
       where session.team_id = $1 and session.id <> all ($2::uuid[])
         and exists (select from run where run.team_id = session.team_id and run.session_id = session.id
                     and run.time is not null and run.voided_at is null)
       order by session.id desc limit $3`,
      [teamId, excluded, sessions],
    );
    return transaction.find(RunEntity, {
      where: {
        teamId,
        sessionId: In(newest.map(({ id }) => id)),
        time: Not(IsNull()),
        voidedAt: IsNull(),
      },
      order: { id: 'ASC' },
    });
  }

  /** Readings whose hit height was found on another basis than the records have now. */
  async staleReadings(
    transaction: Transaction,
    teamId: string,
    engineVersion: string,
  ): Promise<StaleReading[]> {
    return transaction.query(
      `select reading.id, reading."end", reading.travel_used as "travelUsed", reading.reading_sd as "readingSd",
              run.session_id as "sessionId", run.rider_id as "riderId", run.bike_id as "bikeId",
              run.setup_id as "setupId"
       from ring_reading reading
       join run on run.team_id = reading.team_id and run.id = reading.run_id
       join session on session.team_id = run.team_id and session.id = run.session_id
       join track on track.team_id = run.team_id and track.id = run.track_id
       join rider on rider.team_id = run.team_id and rider.id = run.rider_id
       join bike on bike.team_id = run.team_id and bike.id = run.bike_id
       join setup on setup.team_id = run.team_id and setup.id = run.setup_id
       join spring_unit unit on unit.team_id = run.team_id
         and unit.id = case when reading."end" = 'fork' then setup.fork_unit_id else setup.shock_unit_id end
       where reading.team_id = $1
         and reading.basis <> concat_ws('/', $2::text, unit.version, bike.version, rider.version,
                                        session.version, track.version)
       order by reading.id`,
      [teamId, engineVersion],
    );
  }

  async updateHit(
    transaction: Transaction,
    teamId: string,
    id: string,
    columns: Partial<RingReadingEntity>,
  ): Promise<void> {
    await transaction.update(RingReadingEntity, { teamId, id }, columns as never);
  }

  /** How many runs each bike has, and when the last was. */
  async countByBike(
    transaction: Transaction,
    teamId: string,
  ): Promise<{ bikeId: string; runs: number; lastDay: string }[]> {
    return transaction.query(
      `select run.bike_id as "bikeId", count(*)::int as runs, to_char(max(session.day), 'YYYY-MM-DD') as "lastDay"
       from run join session on session.team_id = run.team_id and session.id = run.session_id
       where run.team_id = $1 group by run.bike_id`,
      [teamId],
    );
  }
}
