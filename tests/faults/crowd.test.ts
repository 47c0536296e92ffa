import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startThrowaway } from '../../apps/api/scripts/postgres/embedded.mjs';
import { FORK_END } from '../api/support/spring-end.js';
import { foundTeam } from '../api/support/team.js';
import { waitUntil } from './house.js';
import { firstThreadMs } from './processes.js';
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
/** How often who asks for little asks, and the pause of who asks for much after a refusal. */
const TRIES = 5;
const PAUSE_MS = 20;
/** What anybody may be held up by another's request: CPU time, so that what else the machine does does not count. */
const HELD_UP_MS = 1_000;
/** Some hundred thousand records are stored and audited, one after the other. */
const LARGEST = { timeout: 300_000 };
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
  let isEnough = false;
  let answered = 0;
  let refused = 0;
  const ask = async (): Promise<Response> => {
    const answer = await post(grid, LARGE, greedy);
    await answer.arrayBuffer();
    if (answer.ok) answered += 1;
    else refused += 1;
    return answer;
  };
  const much = Array.from({ length: ASKED_AT_ONCE }, async () => {
    const first = await ask();
    for (let last = first; !isEnough; last = await ask()) if (!last.ok) await sleep(PAUSE_MS);
    return first;
  });
  const meanwhile: number[] = [];
  for (let tries = 0; tries < TRIES; tries += 1) {
    // All the room that there is for one person is taken.
    const already = refused;
    await waitUntil(() => refused > already, LIMIT_MS);
    const before = answered;
    expect((await post(grid, SMALL, modest)).ok).toBe(true);
    meanwhile.push(answered - before);
  }
  isEnough = true;
  const answers = await Promise.all(much);
  expect(new Set(answers.map(({ status }) => status))).toEqual(new Set([200, 429]));
  expect(answers.filter(({ ok }) => ok).length).toBeGreaterThanOrEqual(MOST_OF_ONE);
  for (const { ok, headers } of answers) expect(headers.get('retry-after')).toBe(ok ? null : '1');
  // One after another it would be all that waited, each time. More than one is what was answered while questions and
  // answers travelled: now and then that is much, where this process has to wait for the machine.
  console.log(`of who asks for much were answered meanwhile: ${meanwhile.join(', ')}`);
  expect(Math.min(...meanwhile)).toBeLessThan(MOST_OF_ONE / 3);
  // Later there is room again.
  expect((await post(grid, SMALL, greedy)).ok).toBe(true);
});

describe('a body made to take long', () => {
  /** The most that others are held up by while a request is answered, CPU time in ms, and the answer. */
  async function mostMeanwhile(asked: Promise<Response>): Promise<{ heldUpMs: number; answer: Response }> {
    let isAnswered = false;
    const done = asked.finally(() => (isAnswered = true));
    let heldUpMs = 0;
    while (!isAnswered) {
      const before = firstThreadMs(services.pid(0));
      expect((await fetch(`${services.addresses[0]}/api/v1/health/live`)).ok).toBe(true);
      heldUpMs = Math.max(heldUpMs, firstThreadMs(services.pid(0)) - before);
      await sleep(5);
    }
    return { heldUpMs, answer: await done };
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
    const { heldUpMs, answer } = await mostMeanwhile(
      fetch(`${services.addresses[0]}/api/v1/sign-ins`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body,
      }),
    );
    expect(answer.status).toBe(status);
    expect(heldUpMs).toBeLessThan(HELD_UP_MS);
  });

  it.each([
    ['lists', '[]'],
    ['objects', '{}'],
    ['numbers', '1'],
  ])('as an archive of nothing but %s is refused before it is made', async (_, value) => {
    const cookie = await cookieOfNew();
    const head = '{"format":"loamledger-team","version":1,"x":[';
    const text = `${head}${`${value},`.repeat(Math.floor(32_000_000 / (value.length + 1)))}1]}`;
    const { heldUpMs, answer } = await mostMeanwhile(importing(text, cookie));
    expect(answer.status).toBe(400);
    expect(heldUpMs).toBeLessThan(HELD_UP_MS);
  });

  it('as an archive as large as they may be is looked through while others are served', LARGEST, async () => {
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
    const { heldUpMs, answer } = await mostMeanwhile(importing(text, cookie));
    expect(answer.status).toBe(201);
    // Thirty megabytes of JSON are parsed in one go.
    expect(heldUpMs).toBeLessThan(2 * HELD_UP_MS);
  });
});

const importing = (text: string, cookie: string): Promise<Response> =>
  fetch(`${services.addresses[0]}/api/v1/teams/import`, {
    method: 'POST',
    headers: { 'content-type': 'application/vnd.loamledger.team+json', cookie },
    body: text,
  });
