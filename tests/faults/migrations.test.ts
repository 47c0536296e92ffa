import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { Client } from 'pg';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { MIGRATIONS } from '../../apps/api/src/platform/database/migrations.js';
import { type DurablePostgres, startDurable } from './durable-postgres.js';
import { clone, isReady, makeHouse, waitUntil } from './house.js';
import { migrate } from './several-services.js';
import { schemaOf } from './whole-contents.js';

const LIMIT_MS = 60_000;
/** The lock at which a migration is held up in these tests. */
const GATE = 47_501;

let database: DurablePostgres;
beforeEach(async () => {
  database = await startDurable();
});
afterEach(() => database.clear());

const NAMES = MIGRATIONS.map((migration) => new migration().name);
/** A start, a kill and a recovery for each migration: with more of them it takes longer. */
const EACH = { timeout: NAMES.length * 15_000 };

it('migrates once when four start at the same moment', async () => {
  const said = await Promise.all(Array.from({ length: 4 }, () => migrate(database.url)));
  const all = `migrated: ${NAMES.join(', ')}\n`;
  const nothing = 'schema is up to date\n';
  expect(said.toSorted()).toEqual([all, nothing, nothing, nothing]);
});

it('migrates once and serves twice when two houses start on an empty database at the same moment', async () => {
  const houses = await Promise.all([makeHouse(), makeHouse()]);
  try {
    const starts = houses.map((house) =>
      house.start({ env: { DATABASE_URL: database.url, DEMO_TEAM: 'true' } }),
    );
    const addresses = await Promise.all(starts.map((start) => start.address()));
    expect(new Set(addresses).size).toBe(2);
    for (const address of addresses) expect(await isReady(address)).toBe(true);
    expect(await done()).toEqual(NAMES);
    expect(await database.query('select from team')).toHaveLength(1);
  } finally {
    await Promise.all(houses.map((house) => house.clear()));
  }
});

it('leaves nothing of a migration that was killed before its end, and goes on from there', EACH, async () => {
  await holdUp();
  const before = await whole();
  for (const [place, name] of NAMES.entries()) {
    const gate = await closeGate(name);
    const migrating = startMigrating();
    await waitUntil(() => isHeldUp(), LIMIT_MS);
    // All of its statements have run by now, and the migrations before it are committed.
    expect(await isHeldUp()).toBe(true);
    // In turn the process that migrates and the whole of Postgres.
    if (place % 2 === 0) migrating.kill('SIGKILL');
    else {
      await database.killAll();
      await database.startAgain();
    }
    if (migrating.exitCode === null && migrating.signalCode === null) await once(migrating, 'exit');
    await gate.end().catch(() => undefined);
    await waitUntil(async () => !(await isHeldUp()), LIMIT_MS);
    expect(await done()).toEqual(NAMES.slice(0, place));
    // What the migration before left is all there is; at the first step, that is nothing.
    if (place === 0) expect(await whole()).toEqual(before);
  }
  await migrate(database.url);
  expect(await done()).toEqual(NAMES);
  await database.query('drop function hold_up() cascade');
  expect(await whole()).toEqual(await undisturbed());
});

const done = async (): Promise<string[]> =>
  (await database.query<{ name: string }>('select name from migrations order by id')).map(({ name }) => name);

const whole = (): Promise<unknown> => schemaOf((statement) => database.query(statement));

/** The schema as migrations make it that nobody disturbs. */
async function undisturbed(): Promise<unknown> {
  const other = await startDurable();
  try {
    await migrate(other.url);
    return await schemaOf((statement) => other.query(statement));
  } finally {
    await other.clear();
  }
}

function startMigrating(): ChildProcess {
  const env = { PATH: process.env['PATH'], DATABASE_URL: database.url };
  return spawn(process.execPath, ['apps/api/dist/migrate.js'], { cwd: clone, env, stdio: 'ignore' });
}

/** Lets each migration, when it is written down as its last act, wait while somebody holds the gate and has named it. */
async function holdUp(): Promise<void> {
  await database.query(
    `create table migrations (id serial constraint migrations_pk primary key, timestamp bigint not null, name varchar not null)`,
  );
  await database.query(`create function hold_up() returns trigger language plpgsql as $$
    begin
      if exists (select from pg_stat_activity where application_name = new.name) then
        perform pg_advisory_xact_lock(${GATE});
      end if;
      return new;
    end $$`);
  await database.query(
    'create trigger hold_up before insert on migrations for each row execute function hold_up()',
  );
}

/** Holds the gate for the migration of this name, until the connection ends. */
async function closeGate(name: string): Promise<Client> {
  const gate = new Client({ connectionString: database.url, application_name: name });
  gate.on('error', () => undefined);
  await gate.connect();
  await gate.query(`select pg_advisory_lock(${GATE})`);
  return gate;
}

async function isHeldUp(): Promise<boolean> {
  const waiting = `select from pg_locks where locktype = 'advisory' and objid = ${GATE} and not granted`;
  return (await database.query(waiting)).length > 0;
}
