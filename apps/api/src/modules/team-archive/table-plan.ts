import type { Archived } from '../../platform/archive/archived.js';
import * as checks from '../../platform/archive/checks.js';
import type { Check } from '../../platform/archive/checks.js';
import type { ColumnShape, TableShape } from '../../platform/database/table-shape.js';

/** A table of the archive: its shape in the database, and how it goes in and out. */
export interface TablePlan extends TableShape {
  readonly archived: Archived;
  /** The columns that an archive carries, each with what its value must be. */
  readonly checks: Readonly<Record<string, Check>>;
  /** The columns that hold moments: dates in the database, texts in an archive. */
  readonly moments: readonly string[];
}

/** No text of a record is longer; each column's own limit is in its table's list. */
const LONGEST_TEXT = 20_000;
/** A counter beyond it could not be counted on. */
const MOST_CHANGES = 1_000_000_000;
const MOST_ITEMS = 200_000;

export function tablePlan(archived: Archived, shape: TableShape): TablePlan {
  const carried = shape.columns.filter(({ property }) => !Object.hasOwn(archived.derived, property));
  const all = carried.map((column) => [column.property, checkOf(column, archived)] as const);
  const moments = shape.columns.filter(({ type }) => type === 'timestamptz').map(({ property }) => property);
  return { ...shape, archived, checks: Object.fromEntries(all), moments };
}

function checkOf(column: ColumnShape, { columns }: Archived): Check {
  const own = columns[column.property];
  // Its own check says by itself whether it may be null, as it is one for the whole column.
  if (own) return own;
  if (column.property === 'version') return checks.whole(1, MOST_CHANGES);
  const one = TYPES[column.type];
  if (!one)
    throw new Error(`The archive needs a check for a column of type ${column.type}: ${column.property}.`);
  const whole = column.isArray ? checks.list(one, MOST_ITEMS) : one;
  return column.isNullable ? checks.nullable(whole) : whole;
}

const TYPES: Readonly<Record<string, Check>> = {
  uuid: checks.uuid,
  text: checks.text(LONGEST_TEXT),
  int: checks.whole(-2_147_483_648),
  float8: checks.number(-Number.MAX_VALUE, Number.MAX_VALUE),
  boolean: checks.flag,
  date: checks.day,
  timestamptz: checks.moment,
};

/** The plans so that what is referred to comes first. Tables that refer to each other in a circle cannot be taken in. */
export function inOrder(plans: readonly TablePlan[]): TablePlan[] {
  const ordered: TablePlan[] = [];
  const isPlaced = (table: string) => ordered.some(({ name }) => name === table);
  while (ordered.length < plans.length) {
    const next = plans.find(
      (plan) =>
        !isPlaced(plan.name) && plan.references.every(({ table }) => table === plan.name || isPlaced(table)),
    );
    if (!next) throw new Error('Tables of the archive refer to each other in a circle.');
    ordered.push(next);
  }
  return ordered;
}
