import { Refusal, type FieldProblem } from '../errors/refusal.js';
import { echo } from '../http/validation.pipe.js';
import type { TeamOwned } from '../database/team-owned.entity.js';
import type { Check } from './checks.js';

/** A row of an archive and the rows that it refers to. */
export type Rule<Row = object> = (row: Row, of: (column: string) => object | null) => readonly FieldProblem[];

/**
 * How the rows of one table go into the archive of a team and come out of it. Types, what may be null, references and
 * what is unique are read from the entity; this says the rest.
 */
export interface Archived {
  readonly entity: new () => TeamOwned;
  /** Columns that name a person: an account, which is nobody's or another's where the archive is taken in. */
  readonly people: readonly string[];
  /** Columns that list ids, and the table of which. */
  readonly lists: Readonly<Record<string, string>>;
  /** Columns that the service computes from the others: not archived; what stands in them until it has. */
  readonly derived: Readonly<Record<string, unknown>>;
  /** What a column's value must be beyond its type. */
  readonly columns: Readonly<Record<string, Check>>;
  /** What the whole row must be beyond that: given as stored, with dates as dates. */
  readonly row: Check | undefined;
  readonly rules: readonly Rule[];
}

/** @see Archived */
export function archived<Row extends TeamOwned>(
  entity: new () => Row,
  options: {
    readonly people?: readonly (keyof Row & string)[];
    readonly lists?: Readonly<Partial<Record<keyof Row & string, string>>>;
    readonly derived?: Readonly<Partial<Record<keyof Row & string, unknown>>>;
    readonly columns?: Readonly<Partial<Record<keyof Row & string, Check>>>;
    readonly row?: Check;
    readonly rules?: readonly Rule<Row>[];
  },
): Archived {
  const { people = [], lists = {}, derived = {}, columns = {}, row, rules = [] } = options;
  return { entity, people, lists, derived, columns, row, rules: rules as readonly Rule[] } as Archived;
}

/** The row that `column` refers to must have the same `shared` as this one. */
export const agrees =
  <Row extends object>(column: keyof Row & string, shared: keyof Row & string): Rule<Row> =>
  (row, of) => {
    const other = of(column) as Row | null;
    return other === null || other[shared] === row[shared]
      ? []
      : [{ field: column, given: echo(row[column]), allowed: `one of the same ${shared}` }];
  };

/** The row that `column` refers to must have this `value` as its `theirs`. */
export const refersTo =
  <Row extends object>(column: keyof Row & string, theirs: string, value: string): Rule<Row> =>
  (row, of) => {
    const other = of(column) as Record<string, unknown> | null;
    return other === null || other[theirs] === value
      ? []
      : [{ field: column, given: echo(row[column]), allowed: `one whose ${theirs} is ${value}` }];
  };

/** What a function of the feature refuses of the row, it refuses in an archive too. */
export const accepted =
  <Row extends object>(work: (row: Row, of: (column: string) => object | null) => void): Rule<Row> =>
  (row, of) => {
    try {
      work(row, of);
      return [];
    } catch (error) {
      if (error instanceof Refusal) return error.fields;
      throw error;
    }
  };
