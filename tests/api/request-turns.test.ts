import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Response } from 'supertest';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { RequestTurns } from '../../apps/api/src/platform/http/request-turns.js';
import { openEvents } from './support/events.js';
import { Member, PASSWORD } from './support/member.js';
import { holdTable } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, join, SETUP, type TestTeam } from './support/team.js';

const AT_ONCE = 2;
const MOST_WAITING = 10 * AT_ONCE;
/** Long enough for what is not held up to be answered. */
const A_WHILE_MS = 300;

let service: TestService;
/** As it comes. */
let plain: TestService;
let team: TestTeam;
let held: Awaited<ReturnType<typeof holdTable>> | undefined;
beforeAll(async () => {
  service = await startService({ REQUESTS_AT_ONCE: String(AT_ONCE), TRUSTED_PROXIES: '127.0.0.0/8' });
  plain = await startService({}, service.database);
  team = await foundTeam(service);
});
afterEach(async () => {
  await held?.release();
  await expect.poll(() => turns().atWork).toBe(0);
});
afterAll(async () => {
  await plain.stop();
  await service.stop();
});

const turns = () => service.app.get(RequestTurns);
/** Sends so many requests and does not wait for their answers. */
const send = (count: number, ask: () => PromiseLike<Response>): Promise<Response>[] =>
  Array.from({ length: count }, async () => await ask());
const statuses = async (asked: Promise<Response>[]) => (await Promise.all(asked)).map(({ status }) => status);
async function isAnswered(asked: Promise<unknown>): Promise<boolean> {
  let answered = false;
  void asked.then(() => (answered = true));
  await sleep(A_WHILE_MS);
  return answered;
}

describe('of one account', () => {
  it('so many requests are served at a time; the rest wait, then are refused, and others never are', async () => {
    held = await holdTable(service, 'track');
    const slow = send(AT_ONCE, () => team.mechanic.get(`${team.path}/tracks`));
    await expect.poll(() => turns().atWork).toBe(AT_ONCE);
    const waiting = send(MOST_WAITING, () => team.mechanic.get(`${team.path}/bikes`));
    await expect.poll(() => turns().waiting).toBe(MOST_WAITING);
    const { body, headers } = await team.mechanic.get(`${team.path}/bikes`).expect(429);
    expect(body).toMatchObject({ code: 'requests.too-many', status: 429, errors: [] });
    expect(headers['retry-after']).toBe('1');
    for (const other of [team.coach, team.riderMember]) await other.get(`${team.path}/bikes`).expect(200);
    await new Member(service).signUp();
    await held.release();
    expect(new Set(await statuses([...slow, ...waiting]))).toEqual(new Set([200]));
    await team.mechanic.get(`${team.path}/bikes`).expect(200);
  });

  it('a request whose sender has hung up is served to its end, and holds its turn until then', async () => {
    held = await holdTable(service, 'track');
    const gone = new AbortController();
    const ask = () =>
      fetch(`${service.url}${team.path}/tracks`, {
        headers: { cookie: team.mechanic.cookieHeader },
        signal: gone.signal,
      }).catch(() => undefined);
    const broken = [ask(), ask()];
    await expect.poll(() => turns().atWork).toBe(AT_ONCE);
    gone.abort();
    await Promise.all(broken);
    const next = team.mechanic.get(`${team.path}/bikes`).then((answer) => answer);
    expect(await isAnswered(next)).toBe(false);
    await held.release();
    expect((await next).status).toBe(200);
  });

  it('open streams of events take no turn', async () => {
    const { cookieHeader } = team.mechanic;
    const streams = await Promise.all(
      Array.from({ length: AT_ONCE + 2 }, () =>
        openEvents(`${service.url}${team.path}/events`, cookieHeader),
      ),
    );
    await team.mechanic.get(`${team.path}/bikes`).expect(200);
    for (const stream of streams) stream.close();
  });

  it('what waited is refused where the right to it has ended meanwhile', async () => {
    const coach = await join(service, team, { role: 'coach' });
    held = await holdTable(service, 'track');
    const slow = send(AT_ONCE, () => coach.get(`${team.path}/tracks`));
    await expect.poll(() => turns().atWork).toBe(AT_ONCE);
    const waiting = send(3, () => coach.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }));
    await expect.poll(() => turns().waiting).toBe(3);
    const { body } = await team.mechanic.get(`${team.path}/members`).expect(200);
    const place = (body as { id: string }[]).at(-1);
    await team.mechanic.delete(`${team.path}/members/${place?.id}`).expect(204);
    await held.release();
    expect(await statuses(waiting)).toEqual([404, 404, 404]);
    await Promise.all(slow);
  });

  it('two hundred runs that a phone has kept are taken when it sends them at once', async () => {
    const at = new Member(plain);
    at.keep(await at.post('/sign-ins', { email: team.mechanic.email, password: PASSWORD }).expect(201));
    await at.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
    const run = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09', timeS: 187.4 };
    const kept = send(200, () => at.post(`${team.path}/runs`, run).set('idempotency-key', randomUUID()));
    expect(new Set(await statuses(kept))).toEqual(new Set([201]));
  });
});

describe('of strangers at one address', () => {
  const knock = (address: string) =>
    new Member(service)
      .post('/sign-ins', { email: `${randomUUID()}@team.example`, password: PASSWORD })
      .set('x-forwarded-for', address);

  it('so many are served at a time, and others, members and the question for health go on', async () => {
    held = await holdTable(service, 'sign_in_try');
    const crowd = send(AT_ONCE + MOST_WAITING, () => knock('2001:db8:1:2::1'));
    await expect.poll(() => turns().waiting).toBe(MOST_WAITING);
    const { headers } = await knock('2001:db8:1:2:ffff::9').expect(429);
    expect(headers['retry-after']).toBe('1');
    const elsewhere = knock('2001:db8:1:3::1').then((answer) => answer);
    expect(await isAnswered(elsewhere)).toBe(false);
    await new Member(service).get('/health/live').set('x-forwarded-for', '2001:db8:1:2::1').expect(200);
    await new Member(service).get('/health/ready').set('x-forwarded-for', '2001:db8:1:2::1').expect(200);
    await team.mechanic.get(`${team.path}/bikes`).set('x-forwarded-for', '2001:db8:1:2::1').expect(200);
    await held.release();
    expect((await elsewhere).status).toBe(401);
    for (const status of await statuses(crowd)) expect([401, 429]).toContain(status);
  });
});

it('0 sets no limit', async () => {
  const without = await startService({ REQUESTS_AT_ONCE: '0' }, service.database);
  const at = new Member(without);
  at.keep(await at.post('/sign-ins', { email: team.coach.email, password: PASSWORD }).expect(201));
  expect(new Set(await statuses(send(100, () => at.get('/accounts/current'))))).toEqual(new Set([200]));
  expect(without.app.get(RequestTurns).atWork).toBe(0);
  await without.stop();
});
