/*
 * A spreadsheet takes a cell that begins with one of these for a formula and computes it on opening. Common
 * practice against that: an apostrophe before it. Texts only: a negative number is no formula.
 */
const FORMULA = /^'*[=+\-@]/;
const GUARDED = /^'+[=+\-@]/;

/** The text as it is written into a cell. */
export const writeCellText = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);

/** The text that a cell stands for: the inverse of writing it. */
export const readCellText = (cell: string): string => (GUARDED.test(cell) ? cell.slice(1) : cell);
