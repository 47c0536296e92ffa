import { MAX_REPORTED_PROBLEMS } from './csv.errors.js';
import type { ImportedRun } from './csv-import.js';
import { MAX_PREVIEW_ROWS, type ImportDto, type ImportPreviewDto, type ImportRowDto } from './import.dto.js';
import type { CsvProblem } from './problem.js';

/** What came of a file. */
export interface ImportOutcome {
  readonly runs: readonly ImportedRun[];
  readonly newSessions: number;
  readonly newSetups: number;
  readonly problems: readonly CsvProblem[];
}

export const importAnswer = ({ runs, newSessions, newSetups }: ImportOutcome): ImportDto => ({
  runs: runs.length,
  voidedRuns: runs.filter(({ input }) => input.spoilt).length,
  newSessions,
  newSetups,
});

export const previewAnswer = (outcome: ImportOutcome): ImportPreviewDto => ({
  ...importAnswer(outcome),
  rows: outcome.runs.slice(0, MAX_PREVIEW_ROWS).map(rowAnswer),
  problemCount: outcome.problems.length,
  problems: outcome.problems.slice(0, MAX_REPORTED_PROBLEMS),
});

const rowAnswer = ({ line, input, records }: ImportedRun): ImportRowDto => ({
  line,
  day: records.session.day,
  track: records.track.name,
  bike: records.bike.name,
  rider: records.rider.name,
  condition: records.session.condition,
  setupRevision: records.setup.revision,
  timeS: input.timeS ?? null,
  voided: Boolean(input.spoilt),
});
