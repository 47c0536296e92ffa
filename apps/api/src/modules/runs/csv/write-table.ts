import { COLUMNS, type Part } from './columns.js';
import { writeCellText } from './formula-guard.js';

/** A message's fields to be written; what is null or missing is an empty cell. */
interface CellFields {
  readonly [field: string]: string | number | boolean | null | undefined | CellFields;
}

/** One run's fields by the part they belong to. */
export type RunCells = Readonly<Record<Part, CellFields>>;

const NEEDS_QUOTES = /[",;\t\n\r]/;
/** Enough to give a figure back as it was entered, without the rounding of its conversion to SI and back. */
const SIGNIFICANT_DIGITS = 12;

/** Runs as text/csv (RFC 4180), in the columns that an import reads. */
export function writeTable(runs: readonly RunCells[]): string {
  const header = COLUMNS.map(({ name }) => name).join(',');
  const lines = runs.map((run) =>
    COLUMNS.map(({ part, path }) => quoted(cellOf(valueAt(run[part], path)))).join(','),
  );
  return [header, ...lines, ''].join('\r\n');
}

type Value = CellFields[string];

function valueAt(fields: CellFields, path: string): Value {
  const step = (value: Value, field: string) => (typeof value === 'object' ? value?.[field] : undefined);
  return path.split('.').reduce(step, fields);
}

function cellOf(value: Value): string {
  if (typeof value === 'string') return writeCellText(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'number' ? String(Number(value.toPrecision(SIGNIFICANT_DIGITS))) : '';
}

const quoted = (cell: string) => (NEEDS_QUOTES.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
