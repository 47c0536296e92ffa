import { isUUID } from 'class-validator';
import { byId } from '../../platform/database/rows-by.js';
import type { Breaks } from '../../platform/compute/breaks.js';
import type { FieldProblem } from '../../platform/errors/refusal.js';
import { mapTexts } from './map-texts.js';
import type { ArchivedRow, TeamArchive } from './archive.js';
import type { TablePlan } from './table-plan.js';
import { MAX_REPORTED_PROBLEMS } from './team-archive.errors.js';

/** The rows of each table, by their ids. */
export type RowsById = ReadonlyMap<string, ReadonlyMap<string, ArchivedRow>>;

export const rowsById = ({ records }: TeamArchive, plans: readonly TablePlan[]): RowsById =>
  new Map(plans.map(({ name }) => [name, byId(records[name] ?? [])]));

/**
 * What an archive refers to and does not hold, what it holds twice, and what refers to itself in a circle. An id that
 * is another team's is none of the archive's, so it is found here.
 */
export async function referenceProblems(
  archive: TeamArchive,
  plans: readonly TablePlan[],
  byTable: RowsById,
  breaks: Breaks,
): Promise<FieldProblem[]> {
  const problems: FieldProblem[] = [];
  const report = (field: string, given: unknown, allowed: string): void => {
    if (problems.length <= MAX_REPORTED_PROBLEMS) problems.push({ field, given, allowed });
  };
  const rowsOf = (table: string): readonly ArchivedRow[] => archive.records[table] ?? [];
  const people = new Set(archive.people.map(({ id }) => id));
  const ids = new Set<string>();

  archive.people.forEach((person, i) => {
    const at = `people.${i}`;
    if (ids.has(person.id)) report(`${at}.id`, person.id, 'an id that nothing else has');
    ids.add(person.id);
    if (person.riderId !== null && !byTable.get('rider')?.has(person.riderId))
      report(`${at}.riderId`, person.riderId, 'a rider of the archive');
    if (person.role === 'rider' && person.riderId === null)
      report(`${at}.riderId`, null, 'a rider of the archive, for the role rider');
    const isNameless = person.displayName === null || person.displayName.trim() === '';
    if (isNameless && (person.email !== null || person.role !== null))
      report(`${at}.displayName`, person.displayName, 'a name, for somebody of whom more is known');
  });
  const emails = archive.people.map(({ email }) => email).filter((email) => email !== null);
  if (new Set(emails).size < emails.length)
    report('people', null, 'people of whom no two have one e-mail address');

  for (const { name } of plans) {
    rowsOf(name).forEach(({ id }, i) => {
      if (ids.has(id)) report(`records.${name}.${i}.id`, id, 'an id that nothing else has');
      ids.add(id);
    });
  }
  for (const plan of plans) {
    const seen = plan.uniques.map(() => new Set<string>());
    const documents = plan.columns.filter(({ type }) => type === 'jsonb');
    for (const [i, row] of rowsOf(plan.name).entries()) {
      if (breaks.isDue) await breaks.take();
      const at = `records.${plan.name}.${i}`;
      for (const { column, table, agreeing } of plan.references) {
        if (row[column] === null) continue;
        const other = byTable.get(table)?.get(row[column] as string);
        if (!other) report(`${at}.${column}`, row[column], `the id of a ${table} of the archive`);
        for (const [here, there] of other ? agreeing : [])
          if (row[here] !== other?.[there])
            report(`${at}.${here}`, row[here], `the same as that of ${column}`);
      }
      for (const [column, table] of Object.entries(plan.archived.lists))
        for (const id of (row[column] as string[] | null) ?? [])
          if (!byTable.get(table)?.has(id)) report(`${at}.${column}`, id, `ids of ${table} of the archive`);
      for (const column of plan.archived.people)
        if (row[column] !== null && !people.has(row[column] as string))
          report(`${at}.${column}`, row[column], 'the id of one of the people of the archive');
      for (const { property } of documents)
        mapTexts(row[property], (text) => {
          if (isUUID(text) && !ids.has(text)) report(`${at}.${property}`, text, 'ids of the archive');
          return text;
        });
      plan.uniques.forEach((columns, u) => {
        if (columns.some((column) => row[column] === null)) return;
        const key = JSON.stringify(columns.map((column) => row[column]));
        if (seen[u]?.has(key)) report(`${at}.${columns.join(', ')}`, null, 'what no other row has');
        seen[u]?.add(key);
      });
    }
    for (const { column } of plan.references.filter(({ table }) => table === plan.name))
      for (const i of circles(rowsOf(plan.name), column))
        report(`records.${plan.name}.${i}.${column}`, null, 'one that does not lead back to itself');
  }
  return problems;
}

/** Places of rows that come after themselves by way of `column`. */
function circles(rows: readonly ArchivedRow[], column: string): number[] {
  const next = new Map(rows.map((row) => [row.id, row[column] as string | null]));
  const ends = new Set<string>();
  const found: number[] = [];
  rows.forEach((row, i) => {
    const way = new Set<string>();
    let id: string | null | undefined = row.id;
    while (typeof id === 'string' && !ends.has(id) && !way.has(id)) {
      way.add(id);
      id = next.get(id);
    }
    if (typeof id === 'string' && way.has(id)) found.push(i);
    for (const passed of way) ends.add(passed);
  });
  return found;
}
