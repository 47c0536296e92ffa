import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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
  await rider.getByRole('img', { name: /^Stroke 170\smm/ }).waitFor();
  const scripts = new Map(await Promise.all(loaded));
  const total = [...scripts.values()].reduce((sum, bytes) => sum + bytes, 0);
  expect(scripts.size).toBeGreaterThan(0);
  expect(total, JSON.stringify([...scripts])).toBeLessThanOrEqual(MOST_SCRIPT_BYTES);
});

describe('what the first page shows', () => {
  it('is asked for while the scripts are on their way, and not once more by them', async () => {
    const { page, asked, path, letScriptsCome } = await openWithScriptsHeld(true);
    await page.goto(path, { waitUntil: 'commit' });
    // Of a bike that nobody has named: it is found among the rider's own.
    for (const read of [ACCOUNT, /\/bikes\?/, /\/tracks\?/, /\/setups\?/, /\/decisions\?/, /\/runs\?/]) {
      await expect
        .poll(() => asked.filter((address) => read.test(address)), { timeout: 10_000 })
        .toHaveLength(1);
    }
    const early = [...asked];
    letScriptsCome();
    await page.getByText('71', { exact: true }).waitFor();
    await page.getByRole('img', { name: /^Stroke 170\smm/ }).waitFor();
    expect(asked.filter((address) => early.includes(address))).toEqual(early);
    await page.context().close();
  });

  it('is refused to somebody who is not signed in, who is led to sign in and asks the team nothing more', async () => {
    const { page, asked, path, letScriptsCome } = await openWithScriptsHeld(false);
    await page.goto(path, { waitUntil: 'commit' });
    await expect.poll(() => asked.filter((address) => ACCOUNT.test(address))).toHaveLength(1);
    letScriptsCome();
    await page.getByRole('button', { name: 'Sign in' }).waitFor();
    const ofTeam = asked.filter((address) => !ACCOUNT.test(address));
    expect(new Set(ofTeam).size).toBe(ofTeam.length);
    await page.context().close();
  });
});

const ACCOUNT = /\/accounts\/current$/;

/** A phone that has not been here before, whose line brings the packages of the pages only when it is told to. */
async function openWithScriptsHeld(isSignedIn: boolean) {
  const context = await house.context(PHONE, false);
  const rider = new Caller(house.address);
  const { memberships } = await rider.post<{ memberships: { teamId: string }[] }>('/sign-ins', RIDER);
  if (isSignedIn) await context.addCookies([rider.signInCookie]);
  const page = await context.newPage();
  const asked: string[] = [];
  page.on('request', (request) => {
    if (request.resourceType() === 'fetch' && request.url().includes('/api/')) asked.push(request.url());
  });
  let letScriptsCome = () => {};
  const held = new Promise<void>((resolve) => {
    letScriptsCome = resolve;
  });
  await page.route('**/assets/base-*.js', async (route) => {
    await held;
    await route.continue();
  });
  const path = `${house.address}/teams/${memberships[0]?.teamId}/my-bike`;
  return { page, asked, path, letScriptsCome };
}
