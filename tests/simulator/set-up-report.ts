import { meanRegret, ofTeamsThatCan, shareThere, withRoom } from './figures.js';
import { percent, table } from './markdown.js';
import type { CaseName, TeamOutcome } from './set-up-study.js';
import { shareError } from './share.js';

/** A column: whom the advice is followed by, and whether what is advised is judged or what is ridden next. */
interface Column {
  readonly caseName: CaseName;
  readonly head: string;
  readonly isRidden?: boolean;
}
const COLUMNS: readonly Column[] = [
  { caseName: 'tool', head: 'tool' },
  { caseName: 'tool', head: 'tool, step ridden next', isRidden: true },
  { caseName: 'learned', head: 'tool, wish learned' },
  { caseName: 'alone', head: 'tool, rider alone' },
  { caseName: 'newTeam', head: 'tool, new team' },
  { caseName: 'feel', head: 'by feel' },
  { caseName: 'optimiser', head: 'Gaussian process' },
];
const HEADS = COLUMNS.map(({ head }) => head);
const MILLIMETRES = 1000;

/** The generated part of the page about set-ups. */
export const setUpReport = (seed: number, teams: readonly TeamOutcome[], runs: number): string =>
  [
    setUpTable(seed, teams, runs),
    roomTable(teams),
    '## How far off, beyond the best allowed set-up',
    'Mean over the same teams, mm.',
    bySetUpCase(teams, runs, (outcomes, after) => (MILLIMETRES * meanRegret(outcomes, after)).toFixed(1)),
  ].join('\n\n');

function setUpTable(seed: number, teams: readonly TeamOutcome[], runs: number): string {
  const counts = COLUMNS.filter(({ isRidden }) => !isRidden).map(({ caseName, head }) => {
    const all = teams.filter((outcome) => outcome.caseName === caseName).length;
    return `${head} ${ofTeamsThatCan(teams, caseName).length} of ${all}`;
  });
  return [
    '## Set-ups within 6 mm of the reserve wanted',
    `Seed ${seed}. Share of teams, per cent, among those where an allowed set-up is within 6 mm: ${counts.join(', ')}. ` +
      'Standard errors in brackets.',
    bySetUpCase(teams, runs, shareCell),
  ].join('\n\n');
}

/** Runs after which the teams with room are counted. */
const ROOM_RUNS = [3, 10] as const;

function roomTable(teams: readonly TeamOutcome[]): string {
  const grouped = byColumn(teams).map(withRoom);
  const [tool] = grouped;
  return [
    `Of these, teams whose best allowed set-up is within 3 mm, so that there is room for an error (tool ${tool?.length ?? 0} teams):`,
    table(
      ['runs', ...HEADS],
      ROOM_RUNS.map((after) => [String(after), ...grouped.map((outcomes) => shareCell(outcomes, after))]),
    ),
  ].join('\n\n');
}

/** The teams of each column that can be there, their misses those that the column judges. */
const byColumn = (teams: readonly TeamOutcome[]): TeamOutcome[][] =>
  COLUMNS.map(({ caseName, isRidden }) => {
    const outcomes = ofTeamsThatCan(teams, caseName);
    return isRidden ? outcomes.map((one) => ({ ...one, misses: one.riddenMisses })) : outcomes;
  });

const shareCell = (outcomes: readonly TeamOutcome[], after: number): string => {
  const share = shareThere(outcomes, after);
  return `${percent(share)} (${percent(shareError(share, outcomes.length))})`;
};

function bySetUpCase(
  teams: readonly TeamOutcome[],
  runs: number,
  cell: (outcomes: readonly TeamOutcome[], after: number) => string,
): string {
  const grouped = byColumn(teams);
  return table(
    ['runs', ...HEADS],
    Array.from({ length: runs + 1 }, (_, after) => [
      String(after),
      ...grouped.map((outcomes) => cell(outcomes, after)),
    ]),
  );
}
