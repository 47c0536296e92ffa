import { formatCount } from '../../shared/format/numbers.js';

const KINDS: Readonly<Record<string, readonly [one: string, several?: string]>> = {
  rider: ['rider'],
  spring_unit: ['fork or shock', 'forks and shocks'],
  bike: ['bike'],
  track: ['track'],
  setup: ['set-up'],
  run: ['run'],
  decision: ['decision'],
  test_plan: ['test plan'],
};

export const texts = {
  title: 'Archive of the team',
  lead: 'The whole team as one file: for safe keeping, or to go on with on another service.',
  mechanicsOnly: 'Your mechanic keeps the archive: the body masses of all riders are in it.',
  get: 'Download',
  getLead:
    'Every record: riders, bikes, forks and shocks, tracks, set-ups, runs, decisions, plans, and the baselines as they were offered. Names and e-mail addresses of the members are in it; passwords, sign-ins, tokens and links are not. Keep it where you would keep a list of your riders’ body masses.',
  getButton: 'Download the archive',
  take: 'Take in an archive',
  takeLead:
    'Makes a new team of the file, with you as its mechanic. Nothing of your other teams changes. Members are named in the records and join again by invitation.',
  file: 'Archive (a .json file)',
  takeButton: 'Make a team of it',
  notTaken: 'Not taken in',
  problems: 'What is wrong, and where',
  where: 'Where',
  allowed: 'It must be',
  taken: (name: string) => `${name} is here.`,
  rows: (counts: readonly { table: string; rows: number }[]): string =>
    counts
      .flatMap(({ table, rows }) => {
        const kind = Object.hasOwn(KINDS, table) ? KINDS[table] : undefined;
        return kind === undefined || rows === 0 ? [] : [formatCount(rows, ...kind)];
      })
      .join(', '),
  invite: 'To be invited again',
  role: (role: string | null) => role ?? 'had left',
  open: 'Open the team',
};
