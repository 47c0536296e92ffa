import { InvalidField, Refusal } from '../../../platform/errors/refusal.js';
import type { CsvProblem } from './problem.js';

/** More would help nobody. */
export const MAX_REPORTED_PROBLEMS = 1_000;

export class CsvRefused extends Refusal {
  constructor(problems: readonly CsvProblem[]) {
    super(
      'runs-csv.refused',
      'invalid',
      `The file has ${problems.length} problem${problems.length === 1 ? '' : 's'}; nothing of it was stored.`,
      problems.slice(0, MAX_REPORTED_PROBLEMS).map(({ line, column, given, allowed }) => ({
        field: column ? `line ${line}: ${column}` : `line ${line}`,
        given,
        allowed,
      })),
    );
  }
}

export class NotCsv extends Refusal {
  constructor() {
    super('runs-csv.not-text', 'malformed', 'Send the file as text/csv, encoded as UTF-8.');
  }
}

/** A run without set-up cells on a bike that has no set-up, or with an end's cells missing on its first. */
export class NoSetupBefore extends InvalidField {
  constructor() {
    super(
      'runs-csv.no-setup-before',
      'fork.pressurePsi',
      null,
      'given, with the spacers: the bike has no set-up before this run',
    );
  }
}
