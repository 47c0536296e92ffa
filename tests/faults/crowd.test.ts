import { afterAll, beforeAll, expect, it } from 'vitest';
import { startThrowaway } from '../../apps/api/scripts/postgres/embedded.mjs';
import { FORK_END } from '../api/support/spring-end.js';
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
