import { FindOperator, type EntityMetadata, type EntityTarget, type FindOptionsWhere } from 'typeorm';
import type { Transaction } from './team-database.js';

/** Which rows of one table to read: every condition holds. */
export interface RowQuestion<Row> {
  readonly where: FindOptionsWhere<Row>;
  readonly order?: { readonly [Column in keyof Row]?: 'ASC' | 'DESC' };
  readonly take?: number;
}

/**
 * Whole rows of one table, as the mapper's own `find` gives them. The mapper builds and parses its statement anew for
 * every read, at several times the price of the read itself; this writes the one plain statement down.
 * Conditions are values to be equal to, and the operators In, LessThan, MoreThan, Between, ArrayContains, IsNull and
 * its Not; others throw.
 */
export async function readRows<Row extends object>(
  transaction: Transaction,
  entity: EntityTarget<Row>,
  { where, order = {}, take }: RowQuestion<Row>,
): Promise<Row[]> {
  const metadata = transaction.connection.getMetadata(entity);
  const { columns, selected, fromRow } = tableOf<Row>(metadata);
  const column = (property: string): string => {
    const name = columns.get(property);
    if (name === undefined) throw new Error(`${metadata.name} has no ${property}.`);
    return name;
  };
  const values: unknown[] = [];
  const conditions = Object.entries(where).map(([property, wanted]) =>
    condition(column(property), wanted, values),
  );
  const orders = Object.entries(order).map(([property, way]) => `${column(property)} ${String(way)}`);
  const text = [
    `select ${selected} from ${metadata.tablePath}`,
    conditions.length > 0 ? `where ${conditions.join(' and ')}` : '',
    orders.length > 0 ? `order by ${orders.join(', ')}` : '',
    take === undefined ? '' : `limit ${take}`,
  ].join(' ');
  const rows: Record<string, unknown>[] = await transaction.query(text, values);
  return rows.map(fromRow);
}

/** One condition; its values are added to `values`. */
function condition(column: string, wanted: unknown, values: unknown[]): string {
  if (wanted === undefined || wanted === null) throw new Error(`Nothing is named that ${column} is to be.`);
  const parameter = (value: unknown) => `$${values.push(value)}`;
  if (!(wanted instanceof FindOperator)) return `${column} = ${parameter(wanted)}`;
  if (wanted.type === 'in') return `${column} = any(${parameter(wanted.value)})`;
  if (wanted.type === 'lessThan') return `${column} < ${parameter(wanted.value)}`;
  if (wanted.type === 'moreThan') return `${column} > ${parameter(wanted.value)}`;
  if (wanted.type === 'between') {
    const [least, most] = wanted.value as [unknown, unknown];
    return `${column} between ${parameter(least)} and ${parameter(most)}`;
  }
  if (wanted.type === 'arrayContains') return `${column} @> ${parameter(wanted.value)}`;
  if (wanted.type === 'isNull') return `${column} is null`;
  if (wanted.type === 'not' && wanted.child?.type === 'isNull') return `${column} is not null`;
  throw new Error(`No condition is written for the operator ${wanted.type}.`);
}

interface Table<Row> {
  /** Quoted column of each property. */
  readonly columns: ReadonlyMap<string, string>;
  readonly selected: string;
  readonly fromRow: (row: Record<string, unknown>) => Row;
}

const tables = new WeakMap<EntityMetadata, Table<object>>();

function tableOf<Row extends object>(metadata: EntityMetadata): Table<Row> {
  const known = tables.get(metadata) ?? describe(metadata);
  tables.set(metadata, known);
  return known as Table<Row>;
}

function describe(metadata: EntityMetadata): Table<object> {
  const { driver } = metadata.connection;
  const fields = metadata.columns.map((column) => ({
    property: column.propertyName,
    name: column.databaseName,
    // What the mapper makes of a value, as of a date, is made of it here too.
    convert: (value: unknown): unknown => driver.prepareHydratedValue(value, column),
  }));
  return {
    columns: new Map(fields.map(({ property, name }) => [property, driver.escape(name)])),
    selected: fields.map(({ name }) => driver.escape(name)).join(', '),
    fromRow: (row) => {
      const read: Record<string, unknown> = {};
      for (const { property, name, convert } of fields) read[property] = convert(row[name]);
      return read;
    },
  };
}
