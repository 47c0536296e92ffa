import { writeCellText } from './formula-guard.js';

/** What is null or missing is an empty cell. */
export type Cell = string | number | boolean | null | undefined;

const NEEDS_QUOTES = /[",;\t\n\r]/;
/** Enough to give a figure back as it was entered, without the rounding of its conversion to SI and back. */
const SIGNIFICANT_DIGITS = 12;

/** A header and its lines as text/csv (RFC 4180). */
export const writeTable = (header: readonly string[], lines: readonly (readonly Cell[])[]): string =>
  [header, ...lines].map((cells) => `${cells.map((cell) => quoted(cellText(cell))).join(',')}\r\n`).join('');

function cellText(cell: Cell): string {
  if (typeof cell === 'string') return writeCellText(cell);
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return typeof cell === 'number' ? String(Number(cell.toPrecision(SIGNIFICANT_DIGITS))) : '';
}

const quoted = (cell: string) => (NEEDS_QUOTES.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
