import { readCellText } from '../../../platform/csv/formula-guard.js';
import { fieldsOf, type CellKind, type Part } from './columns.js';
import { cellProblem, type CsvProblem } from './problem.js';
import type { TableRow } from './read-table.js';

/** A message's fields as they were found in the cells; nothing is checked yet. */
export type Fields = { [field: string]: string | number | boolean | Fields };

/** One run's cells as fields of the messages they belong to. */
export interface RunDraft {
  readonly line: number;
  readonly parts: Readonly<Record<Part, Fields>>;
  readonly problems: readonly CsvProblem[];
}

type Value = string | number | boolean;

const NUMBER = /^[+-]?\d+([.,]\d+)?(e[+-]?\d+)?$/i;
const MINUTES = /^(\d{1,3}):([0-5]\d(?:[.,]\d+)?)$/;
const CLOCK = /^(\d\d:\d\d)(:\d\d)?(Z|[+-]\d\d:\d\d)?$/i;
const SECONDS_PER_MINUTE = 60;

/** Reads the cells of one run. A cell that cannot be read is a problem, and no field. */
export function readRow({ line, cells }: TableRow): RunDraft {
  const parts: Record<Part, Fields> = { names: {}, session: {}, setup: {}, run: {}, sections: {} };
  const problems: CsvProblem[] = [];
  const day = cells.find(({ column }) => column.path === 'day')?.text ?? '';
  for (const { column, text } of cells) {
    const { read, allowed } = KINDS[column.kind];
    const value = read(text, day);
    if (value === undefined) problems.push(cellProblem(line, column.name, text, allowed));
    else setField(parts[column.part], fieldsOf(column), value);
  }
  return { line, parts, problems };
}

const KINDS: Record<CellKind, { allowed: string; read: (text: string, day: string) => Value | undefined }> = {
  text: { allowed: 'text', read: readCellText },
  number: { allowed: 'a number such as 12.5 or 12,5', read: readNumber },
  duration: { allowed: 'seconds such as 187.4, or minutes and seconds such as 3:07.4', read: readDuration },
  moment: {
    allowed: 'a time of day such as 10:30 (UTC) or 10:30+02:00, or a moment such as 2026-05-09T10:30:00Z',
    read: readMoment,
  },
  'yes-no': { allowed: 'yes or no', read: readYesNo },
};

function readNumber(text: string): number | undefined {
  const plain = text.replace('\u2212', '-');
  return NUMBER.test(plain) ? Number(plain.replace(',', '.')) : undefined;
}

function readDuration(text: string): number | undefined {
  const parts = MINUTES.exec(text);
  if (!parts) return readNumber(text);
  const [, minutes, seconds = ''] = parts;
  return Number(minutes) * SECONDS_PER_MINUTE + Number(seconds.replace(',', '.'));
}

function readMoment(text: string, day: string): string | undefined {
  if (text.includes('T')) return text;
  const parts = CLOCK.exec(text);
  return parts ? `${day}T${parts[1]}${parts[2] ?? ':00'}${parts[3]?.toUpperCase() ?? 'Z'}` : undefined;
}

function readYesNo(text: string): boolean | undefined {
  const word = text.toLowerCase();
  return word === 'yes' ? true : word === 'no' ? false : undefined;
}

function setField(fields: Fields, path: readonly string[], value: Value): void {
  const [head = '', ...rest] = path;
  if (rest.length === 0) fields[head] = value;
  else setField((fields[head] ??= {}) as Fields, rest, value);
}
