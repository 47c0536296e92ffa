import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startThrowaway } from '../../apps/api/scripts/postgres/embedded.mjs';
import { openEvents } from '../api/support/events.js';
import { Member, PASSWORD } from '../api/support/member.js';
import { justTried } from '../api/support/owner.js';
import { foundTeam, SETUP, type TestTeam } from '../api/support/team.js';
import { type Balancer, startBalancer } from './balancer.js';
import { isReady, waitUntil } from './house.js';
import { migrate, type SeveralServices, startServices } from './several-services.js';
import { startWriters } from './stubborn-writers.js';

const PROCESSES = 2;
const WRITERS = 4;
const LIMIT_MS = 10_000;

let database: Awaited<ReturnType<typeof startThrowaway>>;
let services: SeveralServices;
let balancer: Balancer;
let team: TestTeam;
beforeAll(async () => {
  database = await startThrowaway();
  await migrate(database.url);
  services = await startServices(database.url, PROCESSES, { DRAIN_SECONDS: '1' });
  balancer = await startBalancer(services.addresses);
  team = await foundTeam({ url: `${balancer.address}/api/v1` });
  await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
});
afterAll(async () => {
  await balancer.stop();
  await services.stop();
  await database.stop();
});

const at = (index: number) => ({ url: `${services.addresses[index]}/api/v1` });

describe('several processes behind a balancer', () => {
  it('serve one team together, each a part of the requests', () => {
    // The team was founded, joined and given its records through the balancer.
    expect(Math.min(...balancer.counts)).toBeGreaterThan(3);
    expect(Math.max(...balancer.counts) - Math.min(...balancer.counts)).toBeLessThanOrEqual(1);
  });

  it('know each other’s sign-ins, their ends and the tries that failed', async () => {
    const [here, there] = [new Member(at(0)), new Member(at(1))];
    await here.signUp();
    there.keep(await there.post('/sign-ins', { email: here.email, password: PASSWORD }).expect(201));
    await there.delete('/sign-ins').expect(204);
    await here.get('/accounts/current').expect(401);
    for (let tries = 0; tries < 5; tries += 1) {
      await new Member(at(tries % 2))
        .post('/sign-ins', { email: here.email, password: 'the wrong sentence' })
        .expect(401);
    }
    for (const i of [0, 1]) {
      await justTried({ database: { ownerUrl: database.url } });
      await new Member(at(i)).post('/sign-ins', { email: here.email, password: PASSWORD }).expect(429);
    }
  });

  it('tell the watchers of one what was written by the other', async () => {
    for (const [watched, written] of [
      [0, 1],
      [1, 0],
    ] as const) {
      const events = await openEvents(`${at(watched).url}${team.path}/events`, team.mechanic.cookieHeader);
      try {
        await events.next('ready');
        const answer = await fetch(`${at(written).url}${team.path}/tracks`, {
          method: 'POST',
          headers: { cookie: team.mechanic.cookieHeader, 'content-type': 'application/json' },
          body: JSON.stringify({ name: `Seen from ${watched}`, altitudeM: 1 }),
        });
        expect(answer.status).toBe(201);
        await events.next('change', 'track');
      } finally {
        events.close();
      }
    }
  });

  it('are restarted one after another without failing a single request', async () => {
    const writers = startWriters(team, [balancer.address], WRITERS);
    for (let index = 0; index < PROCESSES; index += 1) {
      const before = writers.acknowledged.length;
      await services.stopAndRestart(index);
      expect(writers.acknowledged.length).toBeGreaterThan(before);
      // The balancer has to see that it is back before the other goes.
      await balancer.ask();
    }
    await writers.stop();
    expect(writers.wrong).toEqual([]);
    expect(writers.failed()).toBe(0);
  });
});

it('a process that is told to stop finishes what it is at, and ends with status 0', async () => {
  const own = await startServices(database.url, 1);
  const address = own.addresses[0] ?? '';
  const lock = new Client({ connectionString: database.url });
  await lock.connect();
  await lock.query('begin');
  await lock.query('lock table track in access exclusive mode');
  const slow = fetch(`${address}/api/v1${team.path}/tracks`, {
    headers: { cookie: team.mechanic.cookieHeader },
  });
  const waiting = `select from pg_locks where relation = 'track'::regclass and not granted`;
  await waitUntil(async () => (await lock.query(waiting)).rowCount === 1, LIMIT_MS);
  const ended = own.stop();
  await waitUntil(async () => !(await isReady(address)), LIMIT_MS);
  // It takes nobody new, but has not ended.
  expect(await isReady(address)).toBe(false);
  await lock.end();
  expect((await slow).status).toBe(200);
  await ended;
  expect(await own.endings()).toEqual(['ended with status 0']);
});
