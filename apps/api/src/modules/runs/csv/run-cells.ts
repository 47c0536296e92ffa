import type { Cell } from '../../../platform/csv/write-table.js';
import { fieldsOf, type Column, type Part } from './columns.js';

/** A message's fields to be written. */
interface CellFields {
  readonly [field: string]: Cell | CellFields;
}

/** One run's fields by the part they belong to. */
export type RunCells = Readonly<Record<Part, CellFields>>;

/** The cell of a run in a column. */
export function cellAt(run: RunCells, column: Column): Cell {
  let value: Cell | CellFields = run[column.part];
  for (const field of fieldsOf(column)) value = typeof value === 'object' ? value?.[field] : undefined;
  return typeof value === 'object' ? null : value;
}
