const PER_CENT = 100;

/** A share as whole per cent, and with a tenth. */
export const percent = (share: number): string => (PER_CENT * share).toFixed(0);
export const tenth = (share: number): string => (PER_CENT * share).toFixed(1);

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

/** A table of the page. */
export const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');
