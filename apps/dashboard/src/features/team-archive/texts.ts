const KINDS: Readonly<Record<string, string>> = {
  rider: 'riders',
  spring_unit: 'forks and shocks',
  bike: 'bikes',
  track: 'tracks',
  setup: 'set-ups',
  run: 'runs',
  decision: 'decisions',
  test_plan: 'test plans',
};

export const texts = {
  title: 'Archive of the team',
  lead: 'The whole team as one file: for safe keeping, or to go on with on another service.',
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
      .filter(({ table, rows }) => rows > 0 && Object.hasOwn(KINDS, table))
      .map(({ table, rows }) => `${rows} ${KINDS[table]}`)
      .join(', '),
  invite: 'To be invited again',
  role: (role: string | null) => role ?? 'had left',
  open: 'Open the team',
};
