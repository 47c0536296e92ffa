import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { Caller } from './support/caller.js';
import { openLine, type Line } from './support/line.js';
import { openHouse, SIZES, type House } from './support/pages.js';
import { MECHANIC, RIDER } from './support/team.js';

const [, PHONE] = SIZES;
/** A phone keeps these on its own; the tests look into them and lay runs there as the form does. */
const DEVICE = 'loamledger';

interface StoredRun {
  readonly note: string;
  readonly setupId: string;
  readonly timeS: number | null;
}

let house: House;
let line: Line;
let rider: Caller;
let teamId: string;

beforeAll(async () => {
  house = await openHouse();
  rider = new Caller(house.address);
  const account = await rider.post<{ memberships: { teamId: string }[] }>('/sign-ins', RIDER);
  teamId = account.memberships[0]?.teamId ?? '';
});
afterAll(() => house.close());
beforeEach(async () => {
  line = await openLine(house.address);
});
afterEach(() => line.close());

/** A phone on its first page, with everything on it that it needs without signal. */
async function phone(): Promise<Page> {
  const page = await house.enterOver(line.address, RIDER, PHONE);
  await page.getByText('71', { exact: true }).waitFor();
  await page.evaluate('navigator.serviceWorker.ready');
  await page.getByRole('img', { name: /^Stroke 170\smm/ }).waitFor();
  return page;
}

async function storedRuns(): Promise<StoredRun[]> {
  const found: StoredRun[] = [];
  let cursor: string | null = null;
  do {
    const next: string = cursor === null ? '' : `&cursor=${cursor}`;
    const answer: { items: StoredRun[]; nextCursor: string | null } = await rider.get(
      `/teams/${teamId}/runs?limit=500${next}`,
    );
    found.push(...answer.items);
    cursor = answer.nextCursor;
  } while (cursor !== null);
  return found;
}

const notedRuns = async (note: string) => (await storedRuns()).filter((run) => run.note === note);

/** Signal again: the browser says so to its pages. */
async function restore(page: Page): Promise<void> {
  line.restore();
  await page.evaluate("window.dispatchEvent(new Event('online'))");
}

async function log(page: Page, note: string, forkMm: string): Promise<void> {
  await page.getByRole('link', { name: 'Log a run' }).click();
  await page.getByLabel('Fork ring', { exact: true }).fill(forkMm);
  await page.getByText('Slate Ladder · damp').click();
  await page.getByLabel('Note', { exact: true }).fill(note);
  await page.getByRole('button', { name: 'Save the run', exact: true }).click();
}

const queue = (page: Page) => page.getByRole('region', { name: 'Runs that wait on this phone' });

describe('a phone without signal', () => {
  it('opens, shows the set-up with its age, keeps a run over a reload and sends it once when the line is back', async () => {
    const page = await phone();
    line.cut();
    await page.reload();
    await page.getByText('71', { exact: true }).waitFor();
    await page.getByText(/^as of \d\d:\d\d, no signal$/).waitFor();

    await log(page, 'in the valley', '139');
    await queue(page).getByText('139 mm used').waitFor();
    await page.reload();
    await queue(page).getByText('139 mm used').waitFor();
    expect(await notedRuns('in the valley')).toHaveLength(0);

    await restore(page);
    await queue(page).waitFor({ state: 'detached' });
    expect(await notedRuns('in the valley')).toHaveLength(1);
  });

  it('does not wait for a service that never answers before it shows what it has kept', async () => {
    const page = await phone();
    line.hold();
    await page.reload();
    await page.getByText('71', { exact: true }).waitFor();
    await page.getByRole('link', { name: 'Log a run' }).waitFor();
  });

  it('sends what another tab had logged when the browser went down', async () => {
    const page = await phone();
    line.cut();
    await log(page, 'before the crash', '137');
    await queue(page).waitFor();
    const context = page.context();
    await page.close();
    line.restore();
    const next = await context.newPage();
    await next.goto(line.address);
    await expect.poll(() => notedRuns('before the crash'), { timeout: 20_000 }).toHaveLength(1);
  });

  it('keeps the set-up that was ridden, though it was changed before the run was sent', async () => {
    const page = await phone();
    line.cut();
    await log(page, 'on the old set-up', '140');
    await queue(page).waitFor();
    const bikes = await rider.get<{ items: { id: string; name: string }[] }>(`/teams/${teamId}/bikes`);
    const bikeId = bikes.items.find(({ name }) => name === 'Fern, enduro')?.id;
    const setups = await rider.get<{ items: { id: string }[] }>(`/teams/${teamId}/setups?bikeId=${bikeId}`);
    const fill = { pressurePsi: 71, reboundClicks: 8, compressionClicks: 5 };
    await rider.post(`/teams/${teamId}/setups`, {
      bikeId,
      fork: { ...fill, spacers: 3 },
      shock: { pressurePsi: 185, spacers: 1 },
      reason: 'One spacer more.',
    });
    await restore(page);
    await queue(page).waitFor({ state: 'detached' });
    const [run] = await notedRuns('on the old set-up');
    expect(run?.setupId).toBe(setups.items[0]?.id);
  });

  it('shows what the service refuses, lets it be corrected, and drops nothing', async () => {
    const page = await phone();
    line.cut();
    await log(page, 'ring misread', '260');
    await queue(page).waitFor();
    await restore(page);
    await queue(page)
      .getByText(/Not taken/)
      .waitFor();
    await page.reload();
    await queue(page).getByRole('link', { name: 'Correct it' }).click();
    const ring = page.getByLabel('Fork ring', { exact: true });
    expect(await ring.inputValue()).toBe('260');
    await ring.fill('160');
    await page.getByRole('button', { name: 'Save the run', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Fern, enduro' }).waitFor();
    await queue(page).waitFor({ state: 'detached' });
    expect(await notedRuns('ring misread')).toHaveLength(1);
  });

  it('asks before it discards a refused run', async () => {
    const page = await phone();
    line.cut();
    await log(page, 'of no use', '270');
    await queue(page).waitFor();
    await restore(page);
    await queue(page).getByRole('button', { name: 'Discard it' }).click();
    await queue(page).getByRole('button', { name: 'No, keep' }).click();
    await queue(page).getByRole('button', { name: 'Discard it' }).click();
    await queue(page).getByRole('button', { name: 'Yes, discard' }).click();
    await queue(page).waitFor({ state: 'detached' });
  });

  it('leaves nothing that was read on the phone after signing out', async () => {
    const page = await phone();
    await page.getByText(RIDER.email).first().click();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    expect(await kept(page, 'reads')).toEqual([]);
  });
});

describe('a test plan without signal', () => {
  /** A plan of the rider's bike with two runs of each of two set-ups, as the mechanic makes it. */
  async function makePlan(name: string): Promise<string> {
    const mechanic = new Caller(house.address);
    await mechanic.post('/sign-ins', MECHANIC);
    const { items: bikes } = await mechanic.get<{ items: { id: string; name: string; riderId: string }[] }>(
      `/teams/${teamId}/bikes`,
    );
    const bike = bikes.find((one) => one.name === 'Fern, enduro');
    const { items: tracks } = await mechanic.get<{ items: { id: string }[] }>(`/teams/${teamId}/tracks`);
    const { items: setups } = await mechanic.get<{ items: { id: string }[] }>(
      `/teams/${teamId}/setups?bikeId=${bike?.id}`,
    );
    const tried = await mechanic.post<{ id: string }>(`/teams/${teamId}/setups`, {
      bikeId: bike?.id,
      fork: { pressurePsi: 71, spacers: 1, reboundClicks: 8, compressionClicks: 5 },
      shock: { pressurePsi: 185, spacers: 1 },
      reason: 'To be tried.',
    });
    const arm = (of: string, setupId: string | undefined) => ({
      name: of,
      setups: [{ bikeId: bike?.id, setupId }],
    });
    const plan = await mechanic.post<{ id: string }>(`/teams/${teamId}/test-plans`, {
      name,
      trackId: tracks[0]?.id,
      riders: [{ riderId: bike?.riderId, bikeId: bike?.id }],
      arms: [arm('Now', setups[0]?.id), arm('Tried', tried.id)],
      runsAnArm: 2,
      warmUps: 0,
    });
    return plan.id;
  }

  it('goes on: the next run is shown, and each is sent once, to its own place', async () => {
    const planId = await makePlan('In the valley');
    const page = await phone();
    const own = page.getByRole('region', { name: 'Your test plan' }).filter({ hasText: 'In the valley' });
    await own.getByText(/^Ride [AB] next$/).waitFor();
    await keepsPlan(page, planId);
    line.cut();
    await own.getByRole('link').click();
    for (const [i, time] of ['3:01.1', '3:02.2'].entries()) {
      await page.getByRole('heading', { name: `Next: run ${i + 1} of 4` }).waitFor();
      await page.getByRole('group', { name: /^Set: .*71\spsi/ }).waitFor();
      await page.getByLabel('Time', { exact: true }).fill(time);
      await page.getByRole('button', { name: new RegExp(`^Save run ${i + 1} on`) }).click();
    }
    await page.getByRole('heading', { name: 'Next: run 3 of 4' }).waitFor();
    expect(await queue(page).getByRole('listitem').count()).toBe(2);
    await page.reload();
    await page.getByRole('heading', { name: 'Next: run 3 of 4' }).waitFor();

    await restore(page);
    await queue(page).waitFor({ state: 'detached' });
    await page.getByText('done, 3:02.2').waitFor();
    const plan = await rider.get<{ runs: { position: number; timeS: number | null }[] }>(
      `/teams/${teamId}/test-plans/${planId}`,
    );
    expect(plan.runs.map(({ timeS }) => timeS)).toEqual([181.1, 182.2, null, null]);
  });

  it('shows the conflict where the plan has moved on meanwhile, and lets the run be kept without it', async () => {
    const planId = await makePlan('Moved on');
    const page = await phone();
    const own = page.getByRole('region', { name: 'Your test plan' }).filter({ hasText: 'Moved on' });
    await own.waitFor();
    await keepsPlan(page, planId);
    line.cut();
    await own.getByRole('link').click();
    await page.getByLabel('Time', { exact: true }).fill('3:03.3');
    await page.getByRole('button', { name: /^Save run 1 on/ }).click();
    await queue(page).waitFor();
    await rider.post(`/teams/${teamId}/test-plans/${planId}/runs`, { day: '2026-05-09', timeS: 190 });
    await restore(page);
    await queue(page)
      .getByText(/ridden at place 1 of the order/)
      .waitFor();
    await queue(page).getByRole('button', { name: 'Log it without the plan' }).click();
    await queue(page).waitFor({ state: 'detached' });
    const found = (await storedRuns()).filter(({ timeS }) => timeS === 183.3);
    expect(found).toHaveLength(1);
  });

  it('offers a place of the order again once its refused run is discarded', async () => {
    const planId = await makePlan('Misread');
    const page = await phone();
    const own = page.getByRole('region', { name: 'Your test plan' }).filter({ hasText: 'Misread' });
    await own.waitFor();
    await keepsPlan(page, planId);
    line.cut();
    await own.getByRole('link').click();
    await page.getByLabel('Fork ring', { exact: true }).fill('280');
    await page.getByRole('button', { name: /^Save run 1 on/ }).click();
    await page.getByRole('heading', { name: 'Next: run 2 of 4' }).waitFor();
    await restore(page);
    await queue(page)
      .getByText(/Not taken/)
      .waitFor();
    await queue(page).getByRole('button', { name: 'Discard it' }).click();
    await queue(page).getByRole('button', { name: 'Yes, discard' }).click();
    await queue(page).waitFor({ state: 'detached' });
    await page.getByRole('heading', { name: 'Next: run 1 of 4' }).waitFor();
  });
});

/** Waits until the phone has the plan itself and what is next in it: both are read in the background. */
const keepsPlan = (page: Page, planId: string) =>
  expect
    .poll(async () =>
      (await kept(page, 'reads'))
        .flatMap(({ key }) => (key.includes(planId) ? key.slice(-1) : []))
        .toSorted(),
    )
    .toEqual(['plan', 'progress']);

/** Every record of a store on the phone. */
const kept = (page: Page, store: string) =>
  page.evaluate(`new Promise((resolve, reject) => {
    const opening = indexedDB.open('${DEVICE}');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const all = opening.result.transaction('${store}').objectStore('${store}').getAll();
      all.onsuccess = () => { opening.result.close(); resolve(all.result); };
    };
  })`) as Promise<{ key: readonly unknown[] }[]>;
