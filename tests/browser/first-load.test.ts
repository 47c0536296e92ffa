import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Caller } from './support/caller.js';
import { openHouse, SIZES, type House } from './support/pages.js';
import { RIDER } from './support/team.js';

/** Script of the rider's first page, compressed with gzip, bytes. */
const MOST_SCRIPT_BYTES = 130_000;
const [, PHONE] = SIZES;

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

it('loads the first page of the rider with little script', async () => {
  const loaded: Promise<[address: string, bytes: number]>[] = [];
  const rider = await house.enter(RIDER, PHONE);
  rider.on('response', (response) => {
    if (response.request().resourceType() !== 'script') return;
    loaded.push(response.body().then((body) => [response.url(), gzipSync(body, { level: 9 }).length]));
  });
  // The worker that keeps the files would answer in the place of the service.
  await rider.evaluate('navigator.serviceWorker.ready.then((worker) => worker.unregister())');
  await rider.reload();
  await rider.getByText('71', { exact: true }).waitFor();
  await rider.getByRole('img', { name: /^Stroke 170 mm/ }).waitFor();
  const scripts = new Map(await Promise.all(loaded));
  const total = [...scripts.values()].reduce((sum, bytes) => sum + bytes, 0);
  expect(scripts.size).toBeGreaterThan(0);
  expect(total, JSON.stringify([...scripts])).toBeLessThanOrEqual(MOST_SCRIPT_BYTES);
});

it('asks who is signed in beside the scripts, and not once more by them', async () => {
  const context = await house.context(PHONE, false);
  const rider = new Caller(house.address);
  const { memberships } = await rider.post<{ memberships: { teamId: string }[] }>('/sign-ins', RIDER);
  await context.addCookies([rider.signInCookie]);
  const page = await context.newPage();
  await page.goto(`${house.address}/teams/${memberships[0]?.teamId}/my-bike`);
  await page.getByText('71', { exact: true }).waitFor();
  const askedBy = await page.evaluate(`performance.getEntriesByType('resource')
    .filter(({ name }) => name.endsWith('/accounts/current'))
    .map(({ initiatorType }) => initiatorType)`);
  expect(askedBy).toEqual(['link']);
  await context.close();
});
