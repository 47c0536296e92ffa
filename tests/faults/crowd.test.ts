import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startThrowaway } from '../../apps/api/scripts/postgres/embedded.mjs';
import { FORK_END } from '../api/support/spring-end.js';
import { foundTeam } from '../api/support/team.js';
import { waitUntil } from './house.js';
import { migrate, startServices, type SeveralServices } from './several-services.js';

/** As much as may be asked for at once. */
const LARGE = {
  end: FORK_END,
  spacers: [0, 1, 2, 3],
  pressuresPsi: Array.from({ length: 100 }, (_, i) => 40 + i / 2),
  heightsM: [0.2, 0.3, 0.4, 0.5, 0.6],
};
const SMALL = { end: FORK_END, spacers: [1], pressuresPsi: [70] };
const ASKED_AT_ONCE = 60;
const LIMIT_MS = 30_000;
/** What anybody may be held up by another's request, other work on the machine included. */
const HELD_UP_MS = 1_000;
/** One that runs and those that wait. */
const MOST_OF_ONE = 21;

let database: Awaited<ReturnType<typeof startThrowaway>>;
let services: SeveralServices;
let grid: string;
beforeAll(async () => {
  database = await startThrowaway();
  await migrate(database.url);
  services = await startServices(database.url, 1);
  grid = `${services.addresses[0]}/api/v1/spring/grid`;
});
afterAll(async () => {
  await services.stop();
  await database.stop();
});

let people = 0;
async function cookieOfNew(): Promise<string> {
  people += 1;
  const person = { email: `crowd-${people}@team.example`, password: 'a sentence nobody guesses' };
  const answer = await post(`${services.addresses[0]}/api/v1/accounts`, { ...person, displayName: 'Person' });
  expect(answer.status).toBe(201);
  return answer.headers.get('set-cookie')?.split(';')[0] ?? '';
}

const post = (url: string, body: object, cookie = '') =>
  fetch(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie },
    body: JSON.stringify(body),
  });

it('lets who asks for little wait for one thing of who asks for much, and not for all', async () => {
  const [greedy, modest] = [await cookieOfNew(), await cookieOfNew()];
  // The thread has loaded what it computes with.
  expect((await post(grid, SMALL, modest)).ok).toBe(true);
  let answered = 0;
  let refused = 0;
  const much = Array.from({ length: ASKED_AT_ONCE }, async () => {
    const answer = await post(grid, LARGE, greedy);
    if (answer.ok) answered += 1;
    else refused += 1;
    await answer.arrayBuffer();
    return answer;
  });
  await waitUntil(() => refused > 0, LIMIT_MS);
  const before = answered;
  expect((await post(grid, SMALL, modest)).ok).toBe(true);
  const meanwhile = answered - before;
  const answers = await Promise.all(much);
  expect(new Set(answers.map(({ status }) => status))).toEqual(new Set([200, 429]));
  expect(answered).toBeGreaterThanOrEqual(MOST_OF_ONE);
  for (const { ok, headers } of answers) expect(headers.get('retry-after')).toBe(ok ? null : '1');
  // One after another it would have been all that waited; more than one is what was answered while questions travelled.
  expect(meanwhile).toBeLessThan(MOST_OF_ONE / 3);
  // Later there is room again.
  expect((await post(grid, SMALL, greedy)).ok).toBe(true);
});

describe('a body made to take long', () => {
  /** The slowest of what others ask for while a request is answered, ms, and the answer. */
  async function slowestMeanwhile(
    asked: Promise<Response>,
  ): Promise<{ slowestMs: number; answer: Response }> {
    let isAnswered = false;
    const done = asked.finally(() => (isAnswered = true));
    let slowestMs = 0;
    while (!isAnswered) {
      const before = performance.now();
      expect((await fetch(`${services.addresses[0]}/api/v1/health/live`)).ok).toBe(true);
      slowestMs = Math.max(slowestMs, performance.now() - before);
      await sleep(5);
    }
    return { slowestMs, answer: await done };
  }

  const long = 'a.'.repeat(120_000);
  const person = { email: 'a@team.example', password: 'a sentence nobody guesses' };
  const names = Object.fromEntries(Array.from({ length: 15_000 }, (_, i) => [`n${i}`, i]));
  it.each([
    ['lists', `[${'[],'.repeat(85_000)}[]]`, 400],
    ['lists, of more bytes than any message', `[${'[],'.repeat(1_390_000)}[]]`, 413],
    ['names', JSON.stringify({ ...person, ...names }), 400],
    ['an address', JSON.stringify({ ...person, email: `a@${long}com` }), 422],
    ['an address before its sign', JSON.stringify({ ...person, email: `${long}@team.example` }), 422],
    ['signs', JSON.stringify({ ...person, email: '@'.repeat(240_000) }), 422],
    ['spaces', JSON.stringify({ ...person, email: `${' '.repeat(240_000)}x` }), 422],
    ['letters with marks', JSON.stringify({ ...person, password: 'a' + '\u0301'.repeat(110_000) }), 422],
  ])('of %s, sent by a stranger, holds up nobody', async (_, body, status) => {
    const { slowestMs, answer } = await slowestMeanwhile(
      fetch(`${services.addresses[0]}/api/v1/sign-ins`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body,
      }),
    );
    expect(answer.status).toBe(status);
    expect(slowestMs).toBeLessThan(HELD_UP_MS);
  });

  it.each([
    ['lists', '[]'],
    ['objects', '{}'],
    ['numbers', '1'],
  ])('as an archive of nothing but %s is refused before it is made', async (_, value) => {
    const cookie = await cookieOfNew();
    const head = '{"format":"loamledger-team","version":1,"x":[';
    const text = `${head}${`${value},`.repeat(Math.floor(32_000_000 / (value.length + 1)))}1]}`;
    const { slowestMs, answer } = await slowestMeanwhile(importing(text, cookie));
    expect(answer.status).toBe(400);
    expect(slowestMs).toBeLessThan(HELD_UP_MS);
  });

  it('as an archive as large as they may be is looked through while others are served', async () => {
    const team = await foundTeam({ url: `${services.addresses[0]}/api/v1` });
    const cookie = team.mechanic.cookieHeader;
    const archive = (await (
      await fetch(`${services.addresses[0]}/api/v1${team.path}/archive`, { headers: { cookie } })
    ).json()) as { records: { track: { id: string; name: string }[] } };
    const [track] = archive.records.track;
    const count = Math.floor(30_000_000 / (JSON.stringify(track).length + 10));
    const tracks = Array.from({ length: count }, (_, i) => ({
      ...track,
      id: randomUUID(),
      name: `Track ${i}`,
    }));
    const text = JSON.stringify({ ...archive, records: { ...archive.records, track: tracks } });
    const { slowestMs, answer } = await slowestMeanwhile(importing(text, cookie));
    expect(answer.status).toBe(201);
    // Thirty megabytes of JSON are parsed in one go.
    expect(slowestMs).toBeLessThan(2 * HELD_UP_MS);
  });
});

const importing = (text: string, cookie: string): Promise<Response> =>
  fetch(`${services.addresses[0]}/api/v1/teams/import`, {
    method: 'POST',
    headers: { 'content-type': 'application/vnd.loamledger.team+json', cookie },
    body: text,
  });
