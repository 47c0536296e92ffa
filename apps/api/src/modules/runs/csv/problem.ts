/** One thing in a file that cannot be taken: where it is, what was given and what would be allowed. */
export interface CsvProblem {
  /** Line of the file, counted from 1; the first line of a run whose cells hold line breaks. */
  readonly line: number;
  /** Header of the column; empty where the whole line is meant. */
  readonly column: string;
  readonly given: string | number | boolean | null;
  readonly allowed: string;
}

const MAX_ECHO_LENGTH = 100;

/** The problem of a cell, its text cut so that an answer never grows with its cause. */
export const cellProblem = (line: number, column: string, given: string, allowed: string): CsvProblem => ({
  line,
  column,
  given: given.slice(0, MAX_ECHO_LENGTH),
  allowed,
});
