import { setTimeout as sleep } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Caller } from './support/caller.js';
import { openLine, type Line } from './support/line.js';
import { openHouse, SIZES, type House } from './support/pages.js';
import { RIDER } from './support/team.js';

const [, PHONE] = SIZES;
const RUNS = 200;
const FLAPS = 50;
/** Long enough for some runs to get through, and for one to be under way when the line goes, ms. */
const UP_MS = 120;
const DOWN_MS = 60;
/** By then the slowest pause between two tries is over, ms. */
const SENT_LIMIT_MS = 150_000;

let house: House;
let line: Line;
beforeAll(async () => {
  house = await openHouse();
  line = await openLine(house.address);
});
afterAll(async () => {
  await line.close();
  await house.close();
});

interface Account {
  readonly id: string;
  readonly memberships: readonly { readonly teamId: string }[];
}

/** Lays runs where the form lays them, and tells the open pages so, as the form in another tab does. */
const lay = (page: Page, runs: readonly object[]) =>
  page.evaluate(`new Promise((resolve, reject) => {
    const opening = indexedDB.open('loamledger');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const writing = opening.result.transaction('runs', 'readwrite');
      for (const run of ${JSON.stringify(runs)}) writing.objectStore('runs').put(run);
      writing.oncomplete = () => {
        opening.result.close();
        new BroadcastChannel('loamledger-runs').postMessage('changed');
        window.dispatchEvent(new Event('online'));
        resolve();
      };
    };
  })`);

const waiting = (page: Page) =>
  page.evaluate(`new Promise((resolve) => {
    const opening = indexedDB.open('loamledger');
    opening.onsuccess = () => {
      const count = opening.result.transaction('runs').objectStore('runs').count();
      count.onsuccess = () => { opening.result.close(); resolve(count.result); };
    };
  })`) as Promise<number>;

it(`stores ${RUNS} runs logged offline once each, with the line flapping ${FLAPS} times, two tabs, reloads and a closed tab`, async () => {
  const rider = new Caller(house.address);
  const account = await rider.post<Account>('/sign-ins', RIDER);
  const teamId = account.memberships[0]?.teamId ?? '';
  const things = async (path: string) =>
    (await rider.get<{ items: { id: string; name: string }[] }>(`/teams/${teamId}${path}`)).items;
  const bikeId = (await things('/bikes')).find(({ name }) => name === 'Fern, enduro')?.id;
  const trackId = (await things('/tracks'))[0]?.id;

  const first = await house.enterOver(line.address, RIDER, PHONE);
  await first.getByText('71', { exact: true }).waitFor();
  await first.evaluate('navigator.serviceWorker.ready');
  line.cut();
  const notes = Array.from({ length: RUNS }, (_, index) => `flapping ${index}`);
  await lay(
    first,
    notes.map((note, index) => ({
      key: `flapping-key-${index}`,
      account: account.id,
      teamId,
      loggedAt: new Date(Date.UTC(2026, 4, 9, 10, 0, index)).toISOString(),
      message: { bikeId, trackId, day: '2026-05-09', condition: 'damp', timeS: 187.5, note },
      names: { bike: '', track: '' },
      refusal: null,
    })),
  );
  await first.reload();
  let second = await first.context().newPage();
  await second.goto(line.address);
  for (let flap = 0; flap < FLAPS; flap += 1) {
    line.restore();
    await Promise.all(
      [first, second].map((page) =>
        page.evaluate("window.dispatchEvent(new Event('online'))").catch(() => undefined),
      ),
    );
    await sleep(UP_MS);
    line.cut();
    await sleep(DOWN_MS);
    if (flap === FLAPS / 2) {
      await second.close();
      second = await first.context().newPage();
      await second.goto(line.address);
    }
  }
  line.restore();
  await first.reload();
  await expect.poll(() => waiting(first), { timeout: SENT_LIMIT_MS, interval: 500 }).toBe(0);

  const stored = await rider.get<{ items: { note: string }[] }>(`/teams/${teamId}/runs?limit=500`);
  const flapping = stored.items.map(({ note }) => note).filter((note) => note.startsWith('flapping'));
  expect(flapping.toSorted()).toEqual(notes.toSorted());
}, 300_000);
