import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Member } from './support/member.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, invite, script, SETUP, type TestTeam } from './support/team.js';
import { planBody, twoSetups } from './support/test-plan.js';
import { enterWorkshop } from './support/workshop.js';

let service: TestService;
let team: TestTeam;
let other: TestTeam;
/** The application's role, as a hole in the service would use it. */
let app: Client;
let owner: Client;

beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  other = await foundTeam(service, 'Team 2');
  for (const { mechanic, path, bike, track, ...one } of [team, other]) {
    await invite({ path, mechanic }, { role: 'coach' });
    await script(service, { path, mechanic }, ['read']);
    await signInLink(mechanic, path);
    const setup = mechanic.post(`${path}/setups`, { ...SETUP, bikeId: bike.id });
    await setup.set('idempotency-key', 'first').expect(201);
    const run = { bikeId: bike.id, trackId: track.id, day: '2026-05-09', fork: { travelLeftMm: 18 } };
    await mechanic.post(`${path}/runs`, run).expect(201);
    await mechanic.get(`${path}/baselines?trackId=${track.id}`).expect(200);
    const whole = { mechanic, path, bike, track, ...one };
    await mechanic.post(`${path}/test-plans`, planBody(whole, await twoSetups(whole))).expect(201);
    await enterWorkshop(whole);
  }
  app = new Client({ connectionString: service.database.appUrl });
  owner = new Client({ connectionString: service.database.ownerUrl });
  await Promise.all([app.connect(), owner.connect()]);
  for (const { id } of [team, other])
    await owner.query(`insert into former_member (team_id, id, display_name) values ($1, $1, 'Coach')`, [id]);
});
afterAll(async () => {
  await Promise.all([app.end(), owner.end()]);
  await service.stop();
});

/** A link by which a rider of the team signs in on another phone. */
async function signInLink(mechanic: Member, path: string): Promise<void> {
  const { body } = await mechanic.get(`${path}/members`).expect(200);
  const rider = (body as { id: string; role: string }[]).find(({ role }) => role === 'rider');
  await mechanic.post(`${path}/members/${rider?.id}/sign-in-links`, { endsOthers: false }).expect(201);
}

async function rows<Row extends object>(
  client: Client,
  statement: string,
  ...values: unknown[]
): Promise<Row[]> {
  return (await client.query<Row>(statement, values)).rows;
}

const teamTables = async () => {
  const found = await rows<{ name: string }>(
    owner,
    `select table_name as name from information_schema.columns
     where table_schema = 'public' and column_name = 'team_id' order by 1`,
  );
  return found.map(({ name }) => name);
};

/** What `statement` gives to the application's role with a team and an account named, or its SQLSTATE. */
async function asApp<Row extends object>(
  scope: { teamId?: string; accountId?: string },
  statement: string,
): Promise<Row[] | string> {
  await app.query('begin');
  try {
    await app.query(`select set_config('app.team_id', $1, true), set_config('app.account_id', $2, true)`, [
      scope.teamId ?? '',
      scope.accountId ?? '',
    ]);
    return (await app.query<Row>(statement)).rows;
  } catch (error) {
    return (error as { code: string }).code;
  } finally {
    await app.query('rollback');
  }
}

const DENIED = '42501';

describe('under the role of the service', () => {
  it('no table of a team shows a row while no team is named', async () => {
    for (const table of [...(await teamTables()), 'team', 'account', 'sign_in']) {
      expect([table, await asApp({}, `select 1 from ${table}`)]).toEqual([table, []]);
    }
  });

  it("every table shows the named team's rows and no other's", async () => {
    for (const table of await teamTables()) {
      const stored = await rows<{ team_id: string }>(owner, `select distinct team_id from ${table}`);
      expect([table, stored.map((row) => row.team_id).toSorted()]).toEqual([
        table,
        [team.id, other.id].toSorted(),
      ]);
      const seen = await asApp({ teamId: team.id }, `select distinct team_id from ${table}`);
      expect([table, seen]).toEqual([table, [{ team_id: team.id }]]);
    }
  });

  it("a statement without any filter changes and deletes no other team's rows", async () => {
    const changed = await asApp<{ team_id: string }>(
      { teamId: team.id },
      `update rider set name = 'x' returning team_id`,
    );
    expect(changed).toEqual([{ team_id: team.id }]);
    const deleted = await asApp<{ team_id: string }>(
      { teamId: team.id },
      `delete from idempotency returning team_id`,
    );
    expect(deleted).toEqual([{ team_id: team.id }]);
  });

  it('no row can be written into another team, nor moved to it', async () => {
    const copy = `insert into rider select '${other.id}', gen_random_uuid(), now(), ${(await columnsOf('rider')).slice(3).join(', ')} from rider`;
    expect(await asApp({ teamId: team.id }, copy)).toBe(DENIED);
    expect(await asApp({ teamId: team.id }, `update rider set team_id = '${other.id}'`)).toBe(DENIED);
  });

  it.each([
    ['setup', 'fork_spacers = 3'],
    ['setup', `note = 'x'`],
    ['run', 'time = 1'],
    ['run', 'setup_id = setup_id'],
    ['decision', `reason = 'x'`],
    ['decision', 'expected = null'],
    ['ring_reading', 'travel_used = 0.1'],
    ['baseline', 'evidence_version = 0'],
    ['test_plan', 'seed = 1'],
    ['test_plan', `made = '{}'`],
    ['test_plan_arm', 'setup_id = setup_id'],
    ['planned_run', 'position = 1'],
    ['sign_in', `token_hash = 'x'`],
    ['account', `password_hash = 'x'`],
  ])('history stays: no update of %s set %s', async (table, change) => {
    expect(await asApp({ teamId: team.id }, `update ${table} set ${change}`)).toBe(DENIED);
  });

  it.each([
    'setup',
    'run',
    'decision',
    'ring_reading',
    'baseline',
    'session',
    'account',
    'team',
    'test_plan',
    'planned_run',
  ])('history stays: no row of %s can be deleted', async (table) => {
    expect(await asApp({ teamId: team.id }, `delete from ${table}`)).toBe(DENIED);
    expect(await asApp({ teamId: team.id }, `truncate ${table} cascade`)).toBe(DENIED);
  });

  it("password hashes cannot be read, not even a team mate's or one's own", async () => {
    const [someone] = await rows<{ id: string }>(owner, 'select account_id as id from member limit 1');
    const scope = { teamId: team.id, accountId: someone?.id ?? '' };
    expect(await asApp(scope, 'select password_hash from account')).toBe(DENIED);
    expect(await asApp(scope, 'select * from account')).toBe(DENIED);
    expect(await asApp(scope, 'select email from account')).not.toBe(DENIED);
  });

  it('neither tables nor roles can be made, and row-level security cannot be turned off', async () => {
    expect(await asApp({ teamId: team.id }, 'alter table rider disable row level security')).toBe(DENIED);
    expect(await asApp({ teamId: team.id }, 'create table mine (id int)')).toBe(DENIED);
    expect(await asApp({ teamId: team.id }, 'create role mine')).toBe(DENIED);
    expect(await asApp({ teamId: team.id }, 'set local row_security = off; select 1 from rider')).toBe(
      DENIED,
    );
  });
});

describe('the schema', () => {
  it('has row-level security on every table but the list of migrations', async () => {
    const open = await rows<{ name: string }>(
      owner,
      `select relname as name from pg_class
       where relnamespace = 'public'::regnamespace and relkind = 'r' and not relrowsecurity`,
    );
    expect(open.map(({ name }) => name)).toEqual(['migrations']);
  });

  it("begins every unique key of a team's tables with the team", async () => {
    const keys = await rows<{ table: string; key: string; first: string }>(
      owner,
      `select class.relname as table, key.relname as key, attribute.attname as first
       from pg_index index
       join pg_class class on class.oid = index.indrelid
       join pg_class key on key.oid = index.indexrelid
       join pg_attribute attribute on attribute.attrelid = class.oid and attribute.attnum = index.indkey[0]
       where index.indisunique and class.relnamespace = 'public'::regnamespace`,
    );
    const tables = await teamTables();
    const wrong = keys.filter(({ table, first }) => tables.includes(table) && first !== 'team_id');
    expect(wrong).toEqual([]);
    expect(new Set(keys.map(({ table }) => table))).toEqual(
      new Set([...keys.map(({ table }) => table), ...tables]),
    );
  });

  it("begins every foreign key between a team's tables with the team", async () => {
    const keys = await rows<{ name: string; from: string; to: string; first: string; target: string }>(
      owner,
      `select con.conname as name, source.relname as from, target.relname as to,
              a.attname as first, b.attname as target
       from pg_constraint con
       join pg_class source on source.oid = con.conrelid
       join pg_class target on target.oid = con.confrelid
       join pg_attribute a on a.attrelid = source.oid and a.attnum = con.conkey[1]
       join pg_attribute b on b.attrelid = target.oid and b.attnum = con.confkey[1]
       where con.contype = 'f'`,
    );
    const tables = await teamTables();
    const between = keys.filter(({ from, to }) => tables.includes(from) && tables.includes(to));
    expect(between.length).toBeGreaterThan(15);
    expect(between.filter(({ first, target }) => first !== 'team_id' || target !== 'team_id')).toEqual([]);
    const toTeam = keys.filter(({ to }) => to === 'team').map(({ from }) => from);
    const belonging = [...toTeam, ...between.map(({ from }) => from)];
    expect(tables.filter((table) => !belonging.includes(table))).toEqual([]);
  });

  it('lets the role of the service neither bypass nor own anything', async () => {
    const [role] = await rows(
      owner,
      `select rolsuper, rolbypassrls, rolcreaterole, rolcreatedb from pg_roles where rolname = 'loamledger_app'`,
    );
    expect(role).toEqual({ rolsuper: false, rolbypassrls: false, rolcreaterole: false, rolcreatedb: false });
    const owned = await rows(
      owner,
      `select relname from pg_class where relowner = 'loamledger_app'::regrole and relnamespace = 'public'::regnamespace`,
    );
    expect(owned).toEqual([]);
  });
});

async function columnsOf(table: string): Promise<string[]> {
  const found = await rows<{ name: string }>(
    owner,
    `select attname as name from pg_attribute where attrelid = $1::regclass and attnum > 0 order by attnum`,
    table,
  );
  return found.map(({ name }) => name);
}
