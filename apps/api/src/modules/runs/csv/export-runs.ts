import { Injectable } from '@nestjs/common';
import { absolutePascal, celsiusFromKelvin, hectopascalFromAbsolutePascal, kelvin } from '@loamledger/units';
import { writeTable } from '../../../platform/csv/write-table.js';
import { TeamDatabase, type Transaction } from '../../../platform/database/team-database.js';
import { visibleRider, type TeamScope } from '../../../platform/http/scope.js';
import { Blinding } from '../../blinding/blinding.js';
import { setupAnswer } from '../../setups/setup-figures.js';
import type { RingReadingEntity } from '../ring-reading.entity.js';
import { runAnswer } from '../run-answer.js';
import type { RunEntity } from '../run.entity.js';
import { RunRecordsReader, type RunKeys, type RunRecords } from '../run-records.js';
import type { EndReadingDto } from '../runs.dto.js';
import { RunsQueries } from '../runs.queries.js';
import { COLUMNS, sectionColumn, type Column } from './columns.js';
import { cellAt, type RunCells } from './run-cells.js';

const PAGE = 500;

/** Writes runs in the format that an import reads. */
@Injectable()
export class ExportRuns {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: RunsQueries,
    private readonly records: RunRecordsReader,
    private readonly blinding: Blinding,
  ) {}

  /** Every run that the member may see, in the order in which they were logged. */
  async csv(scope: TeamScope): Promise<string> {
    return this.database.inTeam(scope, async (transaction) => {
      const recordsOf = this.records.within(transaction, scope.teamId);
      const hidden = await this.blinding.hiddenRuns(transaction, scope);
      const newestFirst: RunCells[] = [];
      for (let cursor: string | undefined, more = true; more;) {
        const runs = await this.page(transaction, scope, cursor);
        const page = runs.slice(0, PAGE);
        newestFirst.push(...(await this.cells(transaction, scope.teamId, page, recordsOf, hidden)));
        more = runs.length > PAGE;
        cursor = runs[PAGE - 1]?.id;
      }
      const columns = [...COLUMNS, ...sectionColumnsOf(newestFirst)];
      return writeTable(
        columns.map(({ name }) => name),
        newestFirst.toReversed().map((run) => columns.map((column) => cellAt(run, column))),
      );
    });
  }

  private page(transaction: Transaction, scope: TeamScope, cursor: string | undefined): Promise<RunEntity[]> {
    const own = visibleRider(scope);
    const start = cursor === undefined ? {} : { cursor };
    return this.queries.page(
      transaction,
      scope.teamId,
      { ...start, limit: PAGE },
      own ? { riderId: own } : {},
    );
  }

  private async cells(
    transaction: Transaction,
    teamId: string,
    runs: readonly RunEntity[],
    recordsOf: (keys: RunKeys) => Promise<RunRecords>,
    hidden: ReadonlySet<string>,
  ): Promise<RunCells[]> {
    const ids = runs.map(({ id }) => id);
    const readings = await this.queries.readingsOf(transaction, teamId, ids);
    const cells: RunCells[] = [];
    for (const run of runs) {
      const own = readings.filter(({ runId }) => runId === run.id);
      cells.push(runCells(run, own, await recordsOf(run), hidden.has(run.id)));
    }
    return cells;
  }
}

/** A column for every section that has a time: sections of one name share it, on whichever tracks they are. */
function sectionColumnsOf(runs: readonly RunCells[]): Column[] {
  const names = runs.toReversed().flatMap(({ sections }) => Object.keys(sections));
  return [...new Set(names)].map(sectionColumn);
}

function runCells(
  run: RunEntity,
  readings: readonly RingReadingEntity[],
  { session, track, bike, rider, setup }: RunRecords,
  hidden: boolean,
): RunCells {
  const {
    startedAt,
    timeS,
    sectionTimes,
    fork,
    shock,
    forkBottomOuts,
    shockBottomOuts,
    ratings,
    note,
    voided,
  } = runAnswer(run, { day: session.day, condition: session.condition, readings, hidden });
  const { airTemperature, stationPressure } = session;
  return {
    names: { track: track.name, bike: bike.name, rider: rider.name },
    session: {
      day: session.day,
      condition: session.condition,
      airTemperatureC: airTemperature === null ? null : celsiusFromKelvin(kelvin(airTemperature)),
      stationPressureHpa:
        stationPressure === null ? null : hectopascalFromAbsolutePascal(absolutePascal(stationPressure)),
    },
    setup: hidden ? {} : setupCells(setup),
    sections: Object.fromEntries(
      sectionTimes.map(({ section, timeS: time }) => [section.toLowerCase(), time]),
    ),
    run: {
      startedAt,
      timeS,
      fork: { ...readingCells(fork), bottomOuts: forkBottomOuts },
      shock: { ...readingCells(shock), bottomOuts: shockBottomOuts },
      ratings: { ...ratings },
      spoilt: voided && { reason: voided.reason, readingsCount: voided.readingsCount },
      note,
    },
  };
}

function setupCells(setup: RunRecords['setup']) {
  const { fork, shock, filledAltitudeM, filledTemperatureC } = setupAnswer(setup);
  return { fork: { ...fork }, shock: shock && { ...shock }, filledAltitudeM, filledTemperatureC };
}

/** Travel used says what travel left would say again. */
const readingCells = (reading: EndReadingDto | null) =>
  reading && { travelUsedMm: reading.travelUsedMm, readingSdMm: reading.readingSdMm };
