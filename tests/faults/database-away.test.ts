import { Client } from 'pg';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { LISTENER_NAME } from '../../apps/api/src/platform/live/change-listener.js';
import { foundTeam, type TestTeam } from '../api/support/team.js';
import { type DurablePostgres, startDurable } from './durable-postgres.js';
import { isReady, waitUntil } from './house.js';
import { migrate, type SeveralServices, startServices } from './several-services.js';
import { expectUnavailable } from './unavailable.js';

/** As long as a service may take to notice that its database is back. */
const RECOVERY_MS = 5_000;
/** A statement is cancelled after 15 s, a wait for a free connection ended after 5 s; the rest is for a busy machine. */
const CANCELLED_MS = 20_000;
const NO_CONNECTION_MS = 9_000;
/** An answer that does not come is waited for 20 s. */
const GIVEN_UP_MS = 27_000;
const POOL = 4;

let database: DurablePostgres;
let services: SeveralServices;
let team: TestTeam;
let address: string;
beforeAll(async () => {
  database = await startDurable();
  await migrate(database.url);
  services = await startServices(database.url, 1, { DATABASE_POOL_SIZE: String(POOL) });
  address = services.addresses[0] ?? '';
  team = await foundTeam({ url: `${address}/api/v1` });
});
afterAll(async () => {
  await services.stop();
  await database.clear();
});

const statusOf = async (path: string): Promise<number> => (await fetch(`${address}/api/v1${path}`)).status;

it.each(['shut down', 'killed'])(
  'answers 503 while its database is %s, lives, and recovers by itself',
  async (how) => {
    await (how === 'killed' ? database.killAll() : database.shutDown());
    const track = { name: `Made while ${how}`, altitudeM: 10 };
    const write = () => team.mechanic.post(`${team.path}/tracks`, track).set('idempotency-key', how);
    for (let round = 0; round < 3; round += 1) {
      expectUnavailable(await team.mechanic.get(`${team.path}/bikes`));
      expectUnavailable(await write());
      expectUnavailable(
        await team.mechanic.post('/sign-ins', { email: 'a@team.example', password: 'any of them' }),
      );
    }
    expect(await statusOf('/health/live')).toBe(200);
    expect(await statusOf('/health/ready')).toBe(503);
    await database.startAgain();
    await waitUntil(() => isReady(address), RECOVERY_MS);
    await write().expect(201);
    await write().expect(201);
    const rows = await database.query('select from track where name = $1', [track.name]);
    expect(rows).toHaveLength(1);
  },
);

it('cancels what takes too long, and keeps nobody waiting for ever meanwhile', async () => {
  const slow = new Client({ connectionString: database.url });
  await slow.connect();
  await slow.query('begin');
  // Whoever reads a track now waits for this lock, as for a statement that does not end.
  await slow.query('lock table track in access exclusive mode');
  try {
    const start = performance.now();
    const passed = () => performance.now() - start;
    const stuck = Array.from({ length: POOL }, () => team.mechanic.get(`${team.path}/tracks`).then());
    const waiting = `select from pg_locks where relation = 'track'::regclass and not granted`;
    await waitUntil(async () => (await slow.query(waiting)).rowCount === POOL, RECOVERY_MS);
    // All connections are taken: others are told so, not kept.
    expectUnavailable(await team.mechanic.get(`${team.path}/bikes`));
    expect(passed()).toBeLessThan(NO_CONNECTION_MS);
    expect(await statusOf('/health/live')).toBe(200);
    for (const answer of await Promise.all(stuck)) expectUnavailable(answer);
    expect(passed()).toBeLessThan(CANCELLED_MS);
    await team.mechanic.get(`${team.path}/bikes`).expect(200);
  } finally {
    await slow.end();
  }
  await team.mechanic.get(`${team.path}/tracks`).expect(200);
});

it('gives up connections whose server says nothing any more, and takes others', async () => {
  // As after a loss of power on the other side: nothing is cancelled, nothing is closed.
  const backends = await database.query(
    'select pid from pg_stat_activity where usename <> current_user and datname = current_database() and application_name <> $1',
    [LISTENER_NAME],
  );
  const pids = backends.map((row) => (row as { pid: number }).pid);
  expect(pids.length).toBeGreaterThan(0);
  for (const pid of pids) process.kill(pid, 'SIGSTOP');
  try {
    const start = performance.now();
    const asked = Array.from({ length: pids.length }, () => team.mechanic.get(`${team.path}/tracks`).then());
    for (const answer of await Promise.all(asked)) expectUnavailable(answer);
    expect(performance.now() - start).toBeLessThan(GIVEN_UP_MS);
    await team.mechanic.get(`${team.path}/tracks`).expect(200);
  } finally {
    for (const pid of pids) process.kill(pid, 'SIGCONT');
  }
});
