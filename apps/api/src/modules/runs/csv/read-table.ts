import { CsvError, parse } from 'csv-parse/sync';
import { COLUMNS, sectionColumn, sectionOfHeader, type Column } from './columns.js';
import { cellProblem, type CsvProblem } from './problem.js';

/** One run's cells, each with its column; empty cells are left out. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly { readonly column: Column; readonly text: string }[];
}

export interface Table {
  readonly rows: readonly TableRow[];
  readonly problems: readonly CsvProblem[];
}

interface CsvRecord {
  readonly line: number;
  readonly cells: readonly string[];
}

export const MAX_ROWS = 5_000;
/** With those that hold nothing but separators, as spreadsheets add them. */
const MAX_LINES = 2 * MAX_ROWS;
/** The sections of fifty tracks beside all others. */
const MAX_COLUMNS = 1_000;
/** Of one line, in characters: many times what a run with its note takes. */
const MAX_LINE_LENGTH = 100_000;
const SEPARATORS = [',', ';', '\t'] as const;

/**
 * Splits a file into runs: separators comma, semicolon or tab as the header has them, line ends of any system,
 * quoted cells, empty lines left out. A file that cannot be split whole has no rows, only problems.
 */
export function readTable(csv: string): Table {
  const records = split(csv.replace(/^\ufeff/, '').replaceAll(/\r\n?/g, '\n'));
  if (!Array.isArray(records)) return { rows: [], problems: [records] };
  const [first, ...following] = records;
  if (!first) return refused(1, 'an empty file', `a header line with at least ${requiredNames()}`);
  const header = narrowed(first, 0);
  if (header.cells.length > MAX_COLUMNS) {
    return refused(header.line, `${header.cells.length} columns`, `at most ${MAX_COLUMNS}`);
  }
  const { columns, problems } = readHeader(header);
  const body = following.map((record) => narrowed(record, header.cells.length));
  if (problems.length > 0) return { rows: [], problems };
  if (body.length === 0) return refused(header.line, 'no runs', 'at least one run below the header');
  if (body.length > MAX_ROWS) {
    return refused(
      body[MAX_ROWS]?.line ?? 0,
      `more than ${MAX_ROWS} runs`,
      `at most ${MAX_ROWS} in one file`,
    );
  }
  const uneven = body.filter(({ cells }) => cells.length !== columns.length);
  return {
    rows: body.filter(({ cells }) => cells.length === columns.length).map((record) => rowOf(record, columns)),
    problems: uneven.map(({ line, cells }) =>
      cellProblem(line, '', `${cells.length} cells`, `${columns.length} cells, as the header has`),
    ),
  };
}

function split(text: string): CsvRecord[] | CsvProblem {
  // A line of separators only, which the parser does not count, would become a million empty cells.
  const long = lineBeyond(MAX_LINE_LENGTH, text);
  if (long !== undefined) return tooLong(long);
  try {
    const records = parse(text, {
      delimiter: separatorOf(text),
      record_delimiter: '\n',
      relax_column_count: true,
      skip_empty_lines: true,
      max_record_size: MAX_LINE_LENGTH,
      // The header, and one by which it is known that there are too many.
      to: MAX_LINES + 2,
      info: true,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    const beyond = records[MAX_LINES + 1];
    if (beyond)
      return cellProblem(beyond.info.lines, '', `more than ${MAX_LINES} lines`, `at most ${MAX_LINES}`);
    return records
      .map(({ record, info }) => ({
        line: firstLine(info.lines, record),
        cells: record.map((cell) => cell.trim()),
      }))
      .filter(({ cells }) => cells.some((cell) => cell !== ''));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const { code, lines = 1 } = error as CsvError & { lines?: number };
    if (code === 'CSV_MAX_RECORD_SIZE') return tooLong(lines);
    return cellProblem(
      lines,
      '',
      'a quote that does not pair',
      'cells in "double quotes" that are closed again; a quote inside is doubled',
    );
  }
}

const tooLong = (line: number): CsvProblem =>
  cellProblem(line, '', 'a longer line', `lines of at most ${MAX_LINE_LENGTH} characters`);

/** The number of the first line that is longer than `most`. */
function lineBeyond(most: number, text: string): number | undefined {
  let number = 0;
  for (const line of linesOf(text)) {
    number += 1;
    if (line.length > most) return number;
  }
  return undefined;
}

/** The separator that the first line has most of. */
function separatorOf(text: string): string {
  const header = firstFilledLine(text);
  const count = (separator: string) => header.split(separator).length;
  return SEPARATORS.reduce((best, separator) => (count(separator) > count(best) ? separator : best));
}

function firstFilledLine(text: string): string {
  for (const line of linesOf(text)) if (line.trim() !== '') return line;
  return '';
}

/** One after another, as far as they are asked for: an expression for one would try each place of a file of spaces. */
function* linesOf(text: string): Generator<string> {
  for (let start = 0; start < text.length;) {
    const end = text.indexOf('\n', start);
    const line = end < 0 ? text.slice(start) : text.slice(start, end);
    yield line;
    start += line.length + 1;
  }
}

// The parser tells the line on which a record ends.
const firstLine = (lastLine: number, cells: readonly string[]) =>
  lastLine - (cells.join('').match(/\n/g)?.length ?? 0);

/** Leaves out the empty cells that spreadsheets add to the end of the lines of a table that once was wider. */
function narrowed({ line, cells }: CsvRecord, width: number): CsvRecord {
  const filled = cells.findLastIndex((cell) => cell !== '') + 1;
  return { line, cells: cells.slice(0, Math.max(width, filled)) };
}

function readHeader(header: CsvRecord): { columns: Column[]; problems: CsvProblem[] } {
  const names = header.cells.map((cell) => cell.toLowerCase());
  const problems: CsvProblem[] = [];
  const columns = names.flatMap((name, index) => {
    const section = sectionOfHeader(header.cells[index] ?? '');
    const column = section ? sectionColumn(section) : COLUMNS.find((candidate) => candidate.name === name);
    if (!column) {
      const known = COLUMNS.map((candidate) => candidate.name).join(', ');
      problems.push(
        cellProblem(
          header.line,
          name,
          header.cells[index] ?? '',
          `a column of: ${known}, or section_s: with the name of a section`,
        ),
      );
    } else if (names.indexOf(name) < index) {
      problems.push(cellProblem(header.line, name, name, 'each column once'));
    }
    return column ?? [];
  });
  for (const { name, required } of COLUMNS) {
    if (required && !names.includes(name)) {
      problems.push(cellProblem(header.line, name, 'no such column', `a file with ${requiredNames()}`));
    }
  }
  return { columns, problems };
}

const requiredNames = () =>
  COLUMNS.filter(({ required }) => required)
    .map(({ name }) => name)
    .join(', ');

function rowOf({ line, cells }: CsvRecord, columns: readonly Column[]): TableRow {
  const filled = columns.map((column, index) => ({ column, text: cells[index] ?? '' }));
  return { line, cells: filled.filter(({ text }) => text !== '') };
}

const refused = (line: number, given: string, allowed: string): Table => ({
  rows: [],
  problems: [cellProblem(line, '', given, allowed)],
});
