import { Injectable } from '@nestjs/common';
import { byId } from '../../platform/database/rows-by.js';
import type { Transaction } from '../../platform/database/team-database.js';
import type { RingReadingEntity } from './ring-reading.entity.js';
import type { RunEntity } from './run.entity.js';
import { RunsQueries } from './runs.queries.js';

/** A run as stored. */
export type Run = Readonly<RunEntity>;

/** A run with what its rings showed. */
export interface RunWithReadings {
  readonly run: Run;
  readonly readings: readonly Readonly<RingReadingEntity>[];
}

/** Stored runs, for features that compare them. */
@Injectable()
export class StoredRuns {
  constructor(private readonly queries: RunsQueries) {}

  require(transaction: Transaction, teamId: string, id: string): Promise<Run> {
    return this.queries.require(transaction, teamId, id);
  }

  /** These runs by their ids. */
  async byIds(transaction: Transaction, teamId: string, ids: readonly string[]): Promise<Map<string, Run>> {
    return byId(await this.queries.byIds(transaction, teamId, ids));
  }

  /** The id of the newest run; null where there is none. */
  async newestId(transaction: Transaction, teamId: string): Promise<string | null> {
    const [newest] = await this.queries.page(transaction, teamId, { limit: 0 });
    return newest?.id ?? null;
  }

  /** Runs on one bike, in one session or in all sessions on a track, oldest first. */
  ofBike(
    transaction: Transaction,
    teamId: string,
    filter: { readonly bikeId: string; readonly trackId: string } & (
      { readonly sessionId: string } | { readonly sessionId?: never }
    ),
  ): Promise<readonly Run[]> {
    return this.queries.all(transaction, teamId, filter);
  }

  /** Runs on these set-ups with their readings, oldest first. */
  async onSetups(
    transaction: Transaction,
    teamId: string,
    setupIds: readonly string[],
  ): Promise<RunWithReadings[]> {
    if (setupIds.length === 0) return [];
    const runs = await this.queries.onSetups(transaction, teamId, setupIds);
    const readings = await this.queries.readingsOf(
      transaction,
      teamId,
      runs.map(({ id }) => id),
    );
    return runs.map((run) => ({ run, readings: readings.filter(({ runId }) => runId === run.id) }));
  }

  /** Timed runs that count, of the newest sessions but these. */
  timedOfOtherSessions(
    transaction: Transaction,
    teamId: string,
    excluded: readonly string[],
    sessions: number,
  ): Promise<readonly Run[]> {
    return this.queries.timedOfOtherSessions(transaction, teamId, excluded, sessions);
  }
}
