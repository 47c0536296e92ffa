import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readConfig } from '../../apps/api/src/config/config.js';
import { ensureDemoTeam } from '../../apps/api/src/demo/ensure-demo-team.js';
import { ComputeThread } from '../../apps/api/src/platform/compute/compute-thread.js';
import { createTestDatabase, type TestDatabase } from '../support/database.js';
import { alike, archiveOf } from './support/archive.js';
import { Member } from './support/member.js';
import { computeHere, startService, type TestService } from './support/service.js';

interface Account {
  memberships: { teamId: string; teamName: string; role: string; riderId: string | null }[];
}
interface Run {
  timeS: number | null;
  voided: { reason: string } | null;
  fork: { hit: { kind: string; heightM: number } | null } | null;
  shock: { hit: { kind: string; heightM: number } | null } | null;
  note: string;
  forkBottomOuts: number | null;
}
interface Page<T> {
  items: T[];
  nextCursor: string | null;
}

// The demo is filled by a service of its own.
computeHere(ComputeThread.prototype);

const SEED_LIMIT_MS = 120_000;
const configOf = (database: TestDatabase) =>
  readConfig({ DATABASE_URL: database.ownerUrl, DATABASE_POOL_SIZE: '2', LOG_LEVEL: 'fatal' });

/** Addresses and passwords of the printed block. */
const signInsOf = (printed: string) =>
  [...printed.matchAll(/(\S+@demo\.example)\s+(\S+)/g)].map(([, email = '', password = '']) => ({
    email,
    password,
  }));

async function countRows(database: TestDatabase): Promise<Record<string, number>> {
  const client = new Client({ connectionString: database.ownerUrl });
  await client.connect();
  const tables = [
    'account',
    'team',
    'member',
    'rider',
    'bike',
    'track',
    'setup',
    'decision',
    'run',
    'ring_reading',
  ];
  const counts: Record<string, number> = {};
  for (const table of tables) {
    const { rows } = await client.query<{ count: number }>(`select count(*)::int as count from ${table}`);
    counts[table] = rows[0]?.count ?? NaN;
  }
  await client.end();
  return counts;
}

describe('an empty database', () => {
  let service: TestService;
  let printed: string;
  let mechanic: Member;
  let path: string;

  beforeAll(async () => {
    service = await startService();
    printed = await ensureDemoTeam(configOf(service.database));
    mechanic = new Member(service);
    path = `/teams/${(await signIn(mechanic, 'mechanic@demo.example')).memberships[0]?.teamId}`;
  }, SEED_LIMIT_MS);
  afterAll(() => service.stop());

  async function signIn(member: Member, email: string): Promise<Account> {
    const credentials = signInsOf(printed).find((candidate) => candidate.email === email);
    const answer = await member.post('/sign-ins', credentials).expect(201);
    member.keep(answer);
    return answer.body as Account;
  }

  async function all<T>(member: Member, things: string, of = ''): Promise<T[]> {
    const items: T[] = [];
    for (let cursor: string | null = ''; cursor !== null;) {
      const start: string = cursor && `&cursor=${cursor}`;
      const page = (await member.get(`${path}/${things}?limit=100&${of}${start}`).expect(200))
        .body as Page<T>;
      items.push(...page.items);
      cursor = page.nextCursor;
    }
    return items;
  }

  it('gets a team that says that it is invented', async () => {
    const { body } = await mechanic.get(path).expect(200);
    expect((body as { name: string }).name).toMatch(/invented/i);
  });

  it('lets a mechanic, a coach and every rider sign in with what is printed', async () => {
    const roles = new Set<string>();
    for (const { email } of signInsOf(printed)) {
      const { memberships } = await signIn(new Member(service), email);
      expect(memberships).toHaveLength(1);
      for (const { role, riderId } of memberships) {
        roles.add(role);
        expect(riderId !== null).toBe(role === 'rider');
      }
    }
    expect(roles).toEqual(new Set(['mechanic', 'coach', 'rider']));
  });

  it('has riders, bikes of three sorts, and tracks at different altitudes', async () => {
    expect((await all(mechanic, 'riders')).length).toBeGreaterThanOrEqual(4);
    const bikes = await all<{ category: string }>(mechanic, 'bikes');
    expect(bikes.length).toBeGreaterThanOrEqual(7);
    expect(new Set(bikes.map(({ category }) => category))).toEqual(new Set(['trail', 'enduro', 'downhill']));
    const tracks = await all<{ altitudeM: number; note: string }>(mechanic, 'tracks');
    expect(new Set(tracks.map(({ altitudeM }) => altitudeM)).size).toBe(5);
    for (const { note } of tracks) expect(note).toMatch(/invented/i);
  });

  it('has units with limits, and one without', async () => {
    const units = await all<{ maxSpacers: number | null }>(mechanic, 'spring-units');
    expect(units).toHaveLength(14);
    expect(units.filter(({ maxSpacers }) => maxSpacers === null)).toHaveLength(1);
  });

  it('has runs with voids, missing times, full-travel readings and felt bottom-outs', async () => {
    const runs = await all<Run>(mechanic, 'runs');
    expect(runs.length).toBeGreaterThanOrEqual(200);
    const voided = runs.flatMap((run) => (run.voided ? [run.voided.reason] : []));
    expect(voided.length).toBeGreaterThan(0);
    expect(voided).not.toContain('');
    expect(runs.filter(({ timeS }) => timeS === null).length).toBeGreaterThan(0);
    expect(runs.filter(({ fork }) => fork?.hit?.kind === 'at-least').length).toBeGreaterThan(0);
    expect(runs.filter(({ forkBottomOuts }) => (forkBottomOuts ?? 0) > 0).length).toBeGreaterThan(0);
    expect(runs.filter(({ note }) => note !== '').length).toBeGreaterThan(0);
    const heights = runs.flatMap(({ fork, shock }) =>
      [fork?.hit?.heightM, shock?.hit?.heightM].filter((h) => h != null),
    );
    // Drops to flat that a bike survives, and that a rider would call a hit.
    for (const height of heights) expect(height).toBeLessThan(2);
    expect(heights.filter((height) => height > 0.1).length).toBeGreaterThan(0.9 * heights.length);
  });

  it('has decisions that were kept, taken back, and are open', async () => {
    const decisions = await all<{ outcome: string | null }>(mechanic, 'decisions');
    expect(new Set(decisions.map(({ outcome }) => outcome))).toEqual(
      new Set(['kept', 'taken back', 'superseded', null]),
    );
  });

  it('has changes that were tried first: what was expected stands beside what the runs then showed', async () => {
    const decisions = await all<{ expected: { fork: object | null } | null }>(mechanic, 'decisions');
    expect(decisions.filter(({ expected }) => expected?.fork != null).length).toBeGreaterThanOrEqual(3);
  });

  it('dates every set-up before the runs on it; the audit trail tells when it was entered', async () => {
    const runs = await all<{ setupId: string; startedAt: string }>(mechanic, 'runs');
    const setups = new Map<string, string>();
    for (const { id } of await all<{ id: string }>(mechanic, 'bikes')) {
      const ofBike = await all<{ id: string; createdAt: string }>(mechanic, 'setups', `bikeId=${id}`);
      for (const { id: setupId, createdAt } of ofBike) setups.set(setupId, createdAt);
    }
    const late = runs.filter(({ setupId, startedAt }) => !((setups.get(setupId) ?? '') < startedAt));
    expect([runs.length > 0, late]).toEqual([true, []]);
    const decisions = await all<{ decidedAt: string; outcome: string; outcomeAt: string | null }>(
      mechanic,
      'decisions',
    );
    for (const { outcomeAt } of decisions.filter(({ outcome }) => outcome === 'kept')) {
      const thatDay = runs.filter(({ startedAt }) => startedAt.slice(0, 10) === outcomeAt?.slice(0, 10));
      expect(thatDay.filter(({ startedAt }) => startedAt > (outcomeAt ?? ''))).toEqual([]);
    }
    const days = runs.map(({ startedAt }) => startedAt.slice(0, 10)).toSorted();
    for (const { decidedAt, outcomeAt } of decisions) {
      expect(days).toContain(decidedAt.slice(0, 10));
      expect(outcomeAt === null || outcomeAt >= decidedAt).toBe(true);
    }
    const entered = await all<{ at: string }>(mechanic, 'audit', 'kind=setup');
    expect(entered.length).toBe(setups.size);
    expect(entered.map(({ at }) => at.slice(0, 10)).toSorted()[0]).not.toBe(days[0]);
    for (const { at } of entered) expect(Date.now() - Date.parse(at)).toBeLessThan(2 * SEED_LIMIT_MS);
  });

  it('shows a rider their own runs only', async () => {
    const rider = new Member(service);
    await signIn(rider, 'clover@demo.example');
    const runs = await all<{ bikeId: string }>(rider, 'runs');
    expect(new Set(runs.map(({ bikeId }) => bikeId)).size).toBe(1);
  });

  it(
    'makes the same team again of its archive, every record in its range',
    async () => {
      const archive = await archiveOf({ mechanic, path });
      const { status, body } = await mechanic.postArchive(archive);
      expect([status, (body as { errors?: unknown }).errors]).toEqual([201, undefined]);
      const again = await archiveOf({ mechanic, path: `/teams/${(body as { id: string }).id}` });
      expect(alike(again)).toEqual(alike(archive));
    },
    SEED_LIMIT_MS,
  );

  it('prints the sign-ins again at the next start and changes nothing', async () => {
    const before = await countRows(service.database);
    expect(await ensureDemoTeam(configOf(service.database))).toBe(printed);
    expect(await countRows(service.database)).toEqual(before);
  });
});

describe('a database that people use', () => {
  it('gets no demo team, and nothing is printed', async () => {
    const service = await startService();
    try {
      await new Member(service).signUp();
      const before = await countRows(service.database);
      expect(await ensureDemoTeam(configOf(service.database))).toBe('');
      expect(await countRows(service.database)).toEqual(before);
    } finally {
      await service.stop();
    }
  });
});

describe('a start that ends in the middle of filling', () => {
  it(
    'leaves nothing behind, and the next start fills the team as if it were the first',
    async () => {
      const database = await createTestDatabase();
      try {
        const broken = ensureDemoTeam(configOf(database));
        const [outcome] = await Promise.allSettled([broken, endFilling(database)]);
        expect(outcome.status).toBe('rejected');
        expect(Object.values(await countRows(database))).toEqual(Array(10).fill(0));
        await ensureDemoTeam(configOf(database));
        expect((await countRows(database))['run']).toBeGreaterThanOrEqual(200);
      } finally {
        await database.drop();
      }
    },
    2 * SEED_LIMIT_MS,
  );
});

/** Ends the session that fills, as the server does for a client that is gone, once its transaction has rows. */
async function endFilling(database: TestDatabase): Promise<void> {
  // As the role itself, which may see and end its own sessions.
  const client = new Client({ connectionString: database.appUrl });
  await client.connect();
  const name = new URL(database.ownerUrl).pathname.slice(1);
  const deadline = Date.now() + SEED_LIMIT_MS;
  for (let ended = 0; ended === 0 && Date.now() < deadline;) {
    const { rowCount } = await client.query(
      `select pg_terminate_backend(pid) from pg_stat_activity
       where datname = $1 and usename = current_user and backend_xid is not null
         and xact_start < clock_timestamp() - interval '500 ms'`,
      [name],
    );
    ended = rowCount ?? 0;
  }
  await client.end();
}
