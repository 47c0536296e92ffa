import { isEmail } from 'class-validator';
import * as checks from '../../platform/archive/checks.js';
import type { Check } from '../../platform/archive/checks.js';
import { holdsMoreThan } from '../../platform/archive/holds-more-than.js';
import { Breaks } from '../../platform/compute/breaks.js';
import type { FieldProblem } from '../../platform/errors/refusal.js';
import { isDeeperThan, MAX_DEPTH } from '../../platform/http/body-size.js';
import { ROLES } from '../../platform/http/scope.js';
import { ARCHIVE_LIMIT_VALUES, FORMAT, VERSION, type ArchivedRow, type TeamArchive } from './archive.js';
import { referenceProblems, rowsById, type RowsById } from './references.js';
import type { TablePlan } from './table-plan.js';
import { ArchiveRefused, MAX_REPORTED_PROBLEMS, NotAnArchive } from './team-archive.errors.js';

const [MAX_NAME, MAX_EMAIL, MAX_PEOPLE, MAX_EVIDENCE] = [80, 254, 10_000, 1_000_000_000];

const email: Check = (value, at) =>
  typeof value === 'string' && value.length <= MAX_EMAIL && value === value.toLowerCase() && isEmail(value)
    ? []
    : [
        {
          field: at,
          given: typeof value === 'string' ? value.slice(0, MAX_NAME) : null,
          allowed: 'an e-mail address',
        },
      ];

const HEAD = checks.part({
  format: checks.word([FORMAT]),
  version: checks.whole(1),
  exportedAt: checks.moment,
  team: checks.part({ name: checks.text(MAX_NAME), evidenceVersion: checks.whole(0, MAX_EVIDENCE) }),
  people: checks.list(
    checks.part({
      id: checks.uuid,
      displayName: checks.nullable(checks.text(MAX_NAME)),
      email: checks.nullable(email),
      role: checks.nullable(checks.word(ROLES)),
      riderId: checks.nullable(checks.uuid),
    }),
    MAX_PEOPLE,
  ),
  records: (value, at) =>
    checks.isObject(value) ? [] : [{ field: at, given: null, allowed: 'an object of tables' }],
});

/**
 * An archive that can be taken in whole: every value of its type and in its range, every reference to a row of the
 * archive itself. A large one takes seconds to look through; meanwhile others are served.
 * @throws NotAnArchive for what is none, ArchiveRefused naming each problem and its place.
 */
export async function readArchive(text: string, plans: readonly TablePlan[]): Promise<TeamArchive> {
  const breaks = new Breaks();
  const archive = parsed(text);
  refuse(HEAD(archive, 'archive'));
  const { records } = archive;
  refuse(
    Object.keys(records)
      .filter((table) => !plans.some(({ name }) => name === table))
      .map((table) => ({
        field: `records.${table.slice(0, MAX_NAME)}`,
        given: table.slice(0, MAX_NAME),
        allowed: 'absent: there is no such table',
      })),
  );
  const wrongColumns: FieldProblem[] = [];
  for (const plan of plans)
    wrongColumns.push(...(await columnProblems(plan, records[plan.name] ?? [], breaks)));
  refuse(wrongColumns);
  // Each later step relies on what the step before it has found in order.
  const byTable = rowsById(archive, plans);
  refuse(await referenceProblems(archive, plans, byTable, breaks));
  const wrongRows: FieldProblem[] = [];
  for (const plan of plans) wrongRows.push(...(await rowProblems(plan, archive, plans, byTable, breaks)));
  refuse(wrongRows);
  return archive;
}

function parsed(text: string): TeamArchive {
  if (holdsMoreThan(ARCHIVE_LIMIT_VALUES, text))
    throw new NotAnArchive(`An archive holds at most ${ARCHIVE_LIMIT_VALUES} values.`);
  let archive: unknown;
  try {
    archive = JSON.parse(text);
  } catch {
    throw new NotAnArchive('The file is not JSON: it is damaged or cut off.');
  }
  if (isDeeperThan(MAX_DEPTH, archive))
    throw new NotAnArchive(`An archive is nested at most ${MAX_DEPTH} deep.`);
  const { format, version } = checks.isObject(archive) ? archive : {};
  if (format !== FORMAT) throw new NotAnArchive('The file is no archive of a team.');
  if (typeof version === 'number' && version > VERSION) {
    throw new NotAnArchive(
      `The archive is of version ${version}, and this service reads up to ${VERSION}: update it first.`,
    );
  }
  return archive as TeamArchive;
}

function refuse(problems: readonly FieldProblem[]): void {
  if (problems.length > 0) throw new ArchiveRefused(problems);
}

async function columnProblems(
  plan: TablePlan,
  rows: unknown,
  breaks: Breaks,
): Promise<readonly FieldProblem[]> {
  const at = `records.${plan.name}`;
  if (!Array.isArray(rows)) return [{ field: at, given: null, allowed: 'a list of rows' }];
  const check = checks.part(plan.checks);
  return upToEnough(rows, breaks, (row, i) => check(row, `${at}.${i}`));
}

/** What the whole row says against itself or against the rows it refers to. */
async function rowProblems(
  plan: TablePlan,
  { records }: TeamArchive,
  plans: readonly TablePlan[],
  byTable: RowsById,
  breaks: Breaks,
): Promise<readonly FieldProblem[]> {
  const { row: check, rules } = plan.archived;
  const stored = (table: string, row: ArchivedRow): object => {
    const of = plans.find(({ name }) => name === table);
    return of ? asStored(of, row) : row;
  };
  return upToEnough(records[plan.name] ?? [], breaks, (row, i) => {
    const at = `records.${plan.name}.${i}`;
    const whole = asStored(plan, row);
    const referred = (column: string): object | null => {
      const table = plan.references.find((reference) => reference.column === column)?.table ?? '';
      const other = byTable.get(table)?.get(row[column] as string);
      return other ? stored(table, other) : null;
    };
    const own = check?.(whole, at) ?? [];
    if (own.length > 0) return own;
    return rules
      .flatMap((rule) => rule(whole, referred))
      .map((problem) => ({ ...problem, field: `${at}.${problem.field}` }));
  });
}

/** The row with dates as dates, as the database gives it. */
export function asStored({ moments }: TablePlan, row: ArchivedRow): object {
  const made = moments.map((property) => [
    property,
    row[property] == null ? null : new Date(row[property] as string),
  ]);
  return { ...row, ...Object.fromEntries(made) };
}

/** Problems of the rows in turn, until there are more than anybody is told. */
async function upToEnough<Row>(
  rows: readonly Row[],
  breaks: Breaks,
  problemsOf: (row: Row, index: number) => readonly FieldProblem[],
): Promise<FieldProblem[]> {
  const found: FieldProblem[] = [];
  for (const [i, row] of rows.entries()) {
    if (breaks.isDue) await breaks.take();
    found.push(...problemsOf(row, i));
    if (found.length > MAX_REPORTED_PROBLEMS) break;
  }
  return found;
}
