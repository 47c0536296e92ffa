import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House, type Size } from './support/pages.js';
import { Caller } from './support/caller.js';
import { BIKE, COACH, FORK, MECHANIC, SHOCK, WITHOUT_LIMITS } from './support/team.js';

/** Width that the margins of a sheet leave on each paper, px at 96 to the inch. */
const PAPERS = [
  { format: 'A4', widthPx: 718 },
  { format: 'Letter', widthPx: 740 },
] as const;
const FERN = 'Rider Fern, Fern, enduro';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

async function openWeekend(size: Size): Promise<Page> {
  const page = await house.enter(COACH, size);
  await page.getByRole('link', { name: 'Weekend' }).click();
  await page.getByRole('heading', { level: 1, name: 'Weekend' }).waitFor();
  await page.getByRole('article', { name: FERN }).waitFor();
  return page;
}

describe.each(SIZES)('the weekend on a $name', (size) => {
  it('recommends for the air that is expected, with evidence and what else would do', async () => {
    const page = await openWeekend(size);
    const fern = page.getByRole('article', { name: FERN });
    expect(await fern.innerText()).toContain('assumed from the altitude');
    await page.getByLabel('Expected air temperature').fill('2');
    await fern.getByText(/For dry ground, air 2\s°C/).waitFor();
    await fern
      .getByRole('group', { name: 'Fork', exact: true })
      .getByText('rider here', { exact: true })
      .waitFor();
    expect(await fern.getByText('Alternatives, reasons and assumed figures').count()).toBeGreaterThan(0);
    await page.getByRole('figure', { name: 'How hard this track hits, fork' }).waitFor();
    expect(new URL(page.url()).searchParams.get('temperatureC')).toBe('2');
    expect(await sidewaysOverflow(page)).toBe(0);
    await page.reload();
    await fern.getByText(/For dry ground, air 2\s°C/).waitFor();
  });

  it('leaves at home who does not ride', async () => {
    const page = await openWeekend(size);
    await page.getByRole('checkbox', { name: 'Rider Fern · Fern, spare' }).uncheck();
    await page.getByRole('article', { name: 'Rider Fern, Fern, spare' }).waitFor({ state: 'detached' });
    expect(await page.getByRole('article', { name: FERN }).count()).toBe(1);
  });

  it('plans who rides when and what, by keyboard alone, and takes it off again after asking', async () => {
    const page = await openWeekend(size);
    await page.getByRole('button', { name: 'Plan a session' }).focus();
    await page.keyboard.press('Enter');
    await page.getByLabel('Starts at').fill(size.name === 'phone' ? '09:30' : '13:15');
    await page.getByLabel('Note').fill('Two slow runs first.');
    await page.getByRole('button', { name: 'Save the session' }).focus();
    await page.keyboard.press('Enter');
    const row = page.getByRole('row').filter({ hasText: size.name === 'phone' ? '09:30' : '13:15' });
    await row.waitFor();
    expect(await row.innerText()).toContain('Rider Fern');
    expect(await row.innerText()).toContain('ride and log · Two slow runs first.');
    await row.getByRole('button', { name: /^Change the session/ }).click();
    await page.getByRole('checkbox', { name: 'Rider Fern', exact: true }).uncheck();
    await page.getByRole('button', { name: 'Save the session' }).click();
    await page.getByText('Choose at least one rider').waitFor();
    await page.getByRole('button', { name: 'Not now' }).click();
    await row.getByRole('button', { name: /^Take the session/ }).click();
    await row.getByRole('button', { name: 'Yes, take it off' }).click();
    await page.getByText('No session planned').waitFor();
  });

  it('prints a sheet for the team and one for each rider, on A4 and on letter, with nothing cut off', async () => {
    const page = await openWeekend(size);
    await page.getByRole('checkbox', { name: 'Rider Fern · Fern, spare' }).uncheck();
    await page.getByRole('link', { name: 'Printed sheets' }).click();
    const sheet = page.getByRole('article', { name: 'Sheet of Rider Fern' });
    await sheet.waitFor();
    await page.getByRole('article', { name: 'Team sheet' }).getByRole('figure').waitFor();
    expect(await sheet.innerText()).toMatch(/\d+\spsi · \d+\sspacers?/);
    expect(await sidewaysOverflow(page)).toBe(0);
    for (const { format, widthPx } of PAPERS) {
      const paper = (await page.pdf({ format })).toString('latin1');
      expect([format, paper.match(/\/Type\s*\/Page\b(?!s)/g)?.length]).toEqual([format, 2]);
      await page.emulateMedia({ media: 'print' });
      await page.setViewportSize({ width: widthPx, height: 1000 });
      expect([format, await sidewaysOverflow(page)]).toEqual([format, 0]);
      await page.emulateMedia({ media: null });
      await page.setViewportSize(size);
    }
    await page.getByLabel('Which sheets').selectOption({ label: 'Sheet of Rider Fern' });
    await page.getByRole('article', { name: 'Team sheet' }).waitFor({ state: 'detached' });
  });
});

/** Writes what the mechanic has entered before the weekend. */
async function enterByMechanic(path: string, message: object): Promise<{ id: string }> {
  const mechanic = new Caller(house.address);
  const { memberships } = await mechanic.post<{ memberships: { teamId: string }[] }>('/sign-ins', MECHANIC);
  return mechanic.post(`/teams/${memberships[0]?.teamId}${path}`, message);
}

describe('a weekend that moves to another track', () => {
  it('closes what was begun for the place before, and saves a session on the track that it shows', async () => {
    await enterByMechanic('/tracks', { name: 'Talus Run', altitudeM: 900, sections: [] });
    const [laptop] = SIZES;
    const page = await openWeekend(laptop);
    const track = page.getByLabel('Track', { exact: true });
    const taking = page.getByRole('group', { name: 'Take baselines' });
    const planning = page.getByRole('button', { name: 'Plan a session' });
    await track.selectOption({ label: 'Talus Run' });
    await page.getByText(/^Talus Run · 900\sm/).waitFor();
    await page.getByRole('article', { name: FERN }).waitFor();
    await track.selectOption({ label: 'Slate Ladder' });
    await page.getByText(/^Slate Ladder · 1450\sm/).waitFor();
    await page.getByRole('button', { name: /^Take \d+ baselines?$/ }).click();
    await taking.waitFor();
    await planning.click();
    await page.getByLabel('Starts at').fill('10:45');

    await track.selectOption({ label: 'Talus Run' });
    await page.getByText(/^Talus Run · 900\sm/).waitFor();
    await page.getByRole('button', { name: /^Take \d+ baselines?$/ }).waitFor();
    expect(await taking.count()).toBe(0);
    await planning.click();
    await page.getByLabel('Starts at').fill('11:15');
    await page.getByRole('button', { name: 'Save the session' }).click();
    await page.getByRole('row').filter({ hasText: '11:15' }).waitFor();
    await track.selectOption({ label: 'Slate Ladder' });
    await page.getByText('No session planned').waitFor();
  });
});

describe('a bike for which nothing is recommended', () => {
  it('is not said to have the baseline in it', async () => {
    const rider = await enterByMechanic('/riders', {
      name: 'Rider Moss',
      readyMassKg: 80,
      readyMassSource: 'measured',
    });
    const fork = await enterByMechanic('/spring-units', { ...FORK, ...WITHOUT_LIMITS, name: 'Fork of Moss' });
    const shock = await enterByMechanic('/spring-units', {
      ...SHOCK,
      ...WITHOUT_LIMITS,
      name: 'Shock of Moss',
    });
    await enterByMechanic('/bikes', {
      ...BIKE,
      name: 'Moss, enduro',
      riderId: rider.id,
      forkUnitId: fork.id,
      shockUnitId: shock.id,
    });
    const [laptop] = SIZES;
    const page = await openWeekend(laptop);
    const moss = page.getByRole('article', { name: 'Rider Moss, Moss, enduro' });
    await moss.getByText('No recommendation').first().waitFor();
    expect(await moss.getByText('What is in the bike now is the baseline.').count()).toBe(0);
    expect(await moss.getByRole('checkbox').count()).toBe(0);
  });
});

describe('baselines of a weekend', () => {
  it('are taken together: all that stay chosen, with what is in each bike then', async () => {
    const [laptop] = SIZES;
    const page = await openWeekend(laptop);
    const take = page.getByRole('button', { name: /^Take \d+ baselines?$/ });
    const [, before = ''] = /(\d+)/.exec(await take.innerText()) ?? [];
    const spare = page.getByRole('checkbox', { name: 'Take this one: Rider Fern, Fern, spare' });
    if ((await spare.count()) > 0) {
      await spare.uncheck();
      await page.getByRole('button', { name: `Take ${Number(before) - 1} baseline` }).waitFor();
    }
    await take.click();
    const asked = page.getByRole('group', { name: 'Take baselines' });
    await asked.getByLabel('Why (may stay empty)').fill('Race weekend.');
    await asked.getByRole('button', { name: 'Take it' }).click();
    const taken = page.getByRole('status').filter({ hasText: 'Taken.' });
    await taken.waitFor();
    expect(await taken.innerText()).toMatch(
      /Rider Fern, Fern, enduro: fork \d+(\.\d)?\spsi · \d+\sspacers?; shock/,
    );
  });
});
