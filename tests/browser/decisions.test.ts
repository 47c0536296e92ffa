import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { COACH, MECHANIC, RIDER } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

/** Opens the page of decisions from wherever the person's first page is. */
async function openDecisions(page: Page): Promise<void> {
  await page.waitForURL(/\/teams\/[^/]+\//);
  await page.goto(`${/^.*\/teams\/[^/]+/.exec(page.url())?.[0] ?? ''}/decisions`);
}

const entries = (page: Page, region: string) =>
  page.getByRole('region', { name: region, exact: true }).getByRole('article');

interface Listed {
  readonly items: readonly { id: string; setupId?: string; name?: string }[];
}

/** Takes the baseline of the bike that has runs, which freezes what is expected of it, and rides it four times. */
async function takeAndRide(page: Page): Promise<void> {
  await page.waitForURL(/\/teams\/[^/]+\//);
  const { origin, pathname } = new URL(page.url());
  const team = `${origin}/api/v1${/\/teams\/[^/]+/.exec(pathname)?.[0] ?? ''}`;
  const read = async (path: string) => (await (await page.request.get(`${team}/${path}`)).json()) as Listed;
  const trackId = (await read('tracks')).items[0]?.id;
  const bikeId = (await read('bikes')).items.find(({ name }) => name === 'Fern, enduro')?.id;
  const baseline = (await read(`baselines?trackId=${trackId}&bikeId=${bikeId}`)).items[0]?.id;
  const taken = await page.request.post(`${team}/baselines/${baseline}/take`, { data: { wholeWay: true } });
  expect(taken.status()).toBe(201);
  for (const travelUsedMm of [131, 138, 128, 142]) {
    const data = { bikeId, trackId, day: '2026-05-10', fork: { travelUsedMm } };
    expect((await page.request.post(`${team}/runs`, { data })).status()).toBe(201);
  }
}

describe.each(SIZES)('decisions on a $name', (size) => {
  it('are reached from the pit, open ones first, each with what changed and why', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Decisions' }).click();
    await page.getByRole('heading', { level: 1, name: 'Decisions' }).waitFor();
    const open = entries(page, 'Open').first();
    await open.getByRole('heading', { level: 3 }).waitFor();
    expect(await open.innerText()).toMatch(/“.+”/);
    expect(await sidewaysOverflow(page)).toBe(0);
  });

  it('are filtered by bike, rider and track with the keyboard alone, and the address keeps it', async () => {
    const page = await house.enter(COACH, size);
    await openDecisions(page);
    await entries(page, 'Open').first().waitFor();
    await page.getByLabel('Bike', { exact: true }).focus();
    await page.keyboard.type('Fern, spare');
    await page.getByText('Nothing is open here.').waitFor();
    expect(page.url()).toContain('bikeId=');
    await page.reload();
    await page.getByText('Nothing is open here.').waitFor();
    await page.getByRole('link', { name: 'Export as CSV' }).waitFor();
    const href = await page.getByRole('link', { name: 'Export as CSV' }).getAttribute('href');
    expect(href).toMatch(/\/decisions\/export\?bikeId=/);
  });

  it('show a rider their own, with nothing to take from others', async () => {
    const page = await house.enter(RIDER, size);
    await openDecisions(page);
    await entries(page, 'Open').first().waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);
  });
});

describe('an open decision', () => {
  it('shows expected above observed, is kept with a word, and stays so', async () => {
    const [laptop] = SIZES;
    const page = await house.enter(MECHANIC, laptop);
    await takeAndRide(page);
    await page.getByRole('link', { name: 'Decisions' }).click();
    const open = entries(page, 'Open').first();
    await open.getByRole('figure', { name: /^Fork expected, sag/ }).waitFor();
    await open.getByRole('figure', { name: 'Fork observed' }).waitFor();
    await open
      .getByText(/^4\sruns: /)
      .first()
      .waitFor();
    await open.getByLabel('What you saw').fill('Held up well.');
    await open.getByRole('button', { name: 'Keep it' }).focus();
    await page.keyboard.press('Enter');
    const settled = entries(page, 'Settled').first();
    await settled.getByText('Held up well.').waitFor();
    expect(await settled.innerText()).toContain('Kept');
    expect(await settled.getByRole('button').count()).toBe(0);
  });
});
