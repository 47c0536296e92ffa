import { runsBetween, type TimedRun } from '@loamledger/evidence';
import { Injectable } from '@nestjs/common';
import { TeamDatabase, type Transaction } from '../../../platform/database/team-database.js';
import type { TeamScope } from '../../../platform/http/scope.js';
import type { Bike } from '../../bikes/bikes.service.js';
import { SessionsService } from '../../sessions/sessions.service.js';
import { TracksService } from '../../tracks/tracks.service.js';
import { LogRun, type KnownRun } from '../log-run.js';
import { LONGEST_RUN_S } from '../run-input.dto.js';
import { once, RunRecordsReader, setupAt } from '../run-records.js';
import { NoSetupYet } from '../runs.errors.js';
import { RunsQueries } from '../runs.queries.js';
import { readGpx } from './read-gpx.js';
import {
  MOST_RUNS,
  USUAL_POSITION_SD_M,
  type RecordedRunDto,
  type RecordingDto,
  type RecordingPreviewDto,
  type RecordingQuery,
} from './recording.dto.js';
import { NoGates, RecordingRefused } from './recording.errors.js';

/** s. No time below a second was meant. */
const SHORTEST_RUN_S = 1;
const MS_PER_SECOND = 1_000;
const MS_PER_MINUTE = 60_000;
/** The same run cut from the same recording again starts at the same moment, but for rounding, s. */
const SAME_START = 0.01;
/** Two standard uncertainties hold 95 of 100. */
const COVERAGE = 1.96;

interface Cut {
  readonly bike: Bike;
  readonly fixes: number;
  readonly runs: readonly TimedRun[];
  readonly problems: readonly string[];
}

/** Cuts the times of runs out of a recording between the gates of a track, and stores all of them or none. */
@Injectable()
export class ImportRecording {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: RunsQueries,
    private readonly records: RunRecordsReader,
    private readonly tracks: TracksService,
    private readonly sessions: SessionsService,
    private readonly logRun: LogRun,
  ) {}

  /** The runs in a recording, and what stands against storing them; stores nothing. */
  async preview(scope: TeamScope, query: RecordingQuery, gpx: string): Promise<RecordingPreviewDto> {
    const cut = await this.database.inTeam(scope, (transaction) => this.cut(transaction, scope, query, gpx));
    return { ...answer(cut, query), problems: [...cut.problems] };
  }

  /** Stores every run. @throws RecordingRefused when there is none, or one stands against it. */
  async commit(scope: TeamScope, query: RecordingQuery, gpx: string): Promise<RecordingDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      await this.queries.lockImports(transaction, scope.teamId);
      const cut = await this.cut(transaction, scope, query, gpx);
      if (cut.problems.length > 0) throw new RecordingRefused(cut.problems);
      await this.logRun.logMany(transaction, scope, await this.known(transaction, scope, query, cut));
      return answer(cut, query);
    });
  }

  private async cut(
    transaction: Transaction,
    scope: TeamScope,
    query: RecordingQuery,
    gpx: string,
  ): Promise<Cut> {
    const { startGate, finishGate, name } = await this.tracks.require(
      transaction,
      scope.teamId,
      query.trackId,
    );
    const bike = await this.records.visibleBike(transaction, scope, query.bikeId);
    if (startGate === null || finishGate === null) throw new NoGates(query.trackId);
    const segments = readGpx(gpx);
    const runs = runsBetween({
      segments,
      start: startGate,
      finish: finishGate,
      positionSd: query.positionSdM ?? USUAL_POSITION_SD_M,
      longest: LONGEST_RUN_S,
    }).filter(({ time }) => time >= SHORTEST_RUN_S);
    const setup = await this.records.latestSetup(transaction, scope.teamId, bike.id);
    const stored = await this.queries.startsOf(
      transaction,
      scope.teamId,
      bike.id,
      runs.map(({ startedAt }) => startedAt),
    );
    const isStored = ({ startedAt }: TimedRun) =>
      stored.some((start) => Math.abs(start - startedAt) <= SAME_START);
    return {
      bike,
      fixes: segments.reduce((sum, fixes) => sum + fixes.length, 0),
      runs: runs.slice(0, MOST_RUNS),
      problems: [
        ...(runs.length === 0
          ? [`Nothing in this recording passes the start gate of ${name} and then its finish gate.`]
          : []),
        ...(runs.length > MOST_RUNS
          ? [`It holds ${runs.length} runs; at most ${MOST_RUNS} are taken at once.`]
          : []),
        ...(setup === null ? [new NoSetupYet().message] : []),
        ...runs
          .slice(0, MOST_RUNS)
          .filter(isStored)
          .map(({ startedAt }) => `The run of ${moment(startedAt)} is stored already.`),
      ],
    };
  }

  /** The runs with their records: each record is read, and each session locked, once for all runs. */
  private async known(
    transaction: Transaction,
    { teamId }: TeamScope,
    query: RecordingQuery,
    { bike, runs }: Cut,
  ): Promise<KnownRun[]> {
    const { trackId, bikeId, condition = 'dry' } = query;
    const recordsOf = this.records.within(transaction, teamId);
    const setups = await this.records.setupsOf(transaction, teamId, bikeId);
    const sessionOn = once(async (day) => {
      const { session } = await this.sessions.ensure(transaction, teamId, { trackId, day, condition });
      await this.sessions.lock(transaction, teamId, session.id);
      return session;
    });
    const known: KnownRun[] = [];
    for (const run of runs) {
      const { day, startedAt, timeS } = runAnswer(run, query);
      const setup = setupAt(setups, new Date(startedAt));
      if (setup === undefined) throw new NoSetupYet();
      const session = await sessionOn(day);
      const input = { trackId, day, condition, bikeId, startedAt, timeS, note: noteOf(run) };
      const keys = { sessionId: session.id, setupId: setup.id, bikeId, riderId: bike.riderId };
      const records = await recordsOf(keys);
      this.logRun.check(input, records);
      known.push({ input, records });
    }
    return known;
  }
}

const answer = ({ fixes, runs }: Cut, query: RecordingQuery): RecordingDto => ({
  fixes,
  runs: runs.map((run) => runAnswer(run, query)),
});

const runAnswer = (run: TimedRun, { utcOffsetMin = 0 }: RecordingQuery): RecordedRunDto => ({
  startedAt: moment(run.startedAt),
  day: new Date(run.startedAt * MS_PER_SECOND + utcOffsetMin * MS_PER_MINUTE).toISOString().slice(0, 10),
  // A hundredth of a second is far below what a receiver tells.
  timeS: Number(run.time.toFixed(2)),
  timeSdS: Number(run.timeSd.toFixed(2)),
});

const moment = (seconds: number): string => new Date(Math.round(seconds * MS_PER_SECOND)).toISOString();

/** What the run's own note says of its time. */
const noteOf = ({ timeSd }: TimedRun): string =>
  `Time cut from a recording, good to ±${(COVERAGE * timeSd).toFixed(1)} s (95 %).`;
