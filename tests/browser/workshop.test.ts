import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House, type Size } from './support/pages.js';
import { MECHANIC } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

/**
 * Pressures, psi, that a positive chamber of 227 mL with 4 mL of hose on a bore of 907.9 mm² shows at sea level at
 * full extension and 100 mm, by the ideal gas at one temperature, to half a psi; and before and after the emptied
 * negative chamber of 31.7 mL has filled.
 */
const TWO_READINGS = { extended: '60', travel: '100', held: '108.5' };
const EQUALISING = { before: '70', after: '60.7' };

async function openUnit(size: Size): Promise<Page> {
  const page = await house.enter(MECHANIC, size);
  await page.getByRole('link', { name: 'Team', exact: true }).click();
  await page.getByRole('link', { name: 'Fork of Fern, spare', exact: true }).click();
  await page.getByRole('link', { name: 'Measure this unit' }).click();
  await page.getByRole('heading', { level: 1, name: 'Measure Fork of Fern, spare' }).waitFor();
  return page;
}

const tryOf = (page: Page, number: number, place: 'first' | 'last' = 'first') =>
  page.getByRole('group', { name: `Try ${number}`, exact: true })[place]();

async function enterTry(page: Page, number: number, { extended, travel, held }: typeof TWO_READINGS) {
  const row = tryOf(page, number);
  await row.getByLabel('Pressure extended').fill(extended);
  await row.getByLabel('Travel held').fill(travel);
  await row.getByLabel('Pressure held').fill(held);
}

/** Somebody else changes the unit that the page has open. */
const changeElsewhere = (page: Page) =>
  page.evaluate(`(async () => {
    const [, , teamId, , unitId] = location.pathname.split('/');
    const path = '/api/v1/teams/' + teamId + '/spring-units';
    const { items } = await (await fetch(path)).json();
    const { id, version, spacersInStock, ...unit } = items.find((item) => item.id === unitId);
    const answer = await fetch(path + '/' + id, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'If-Match': '"' + version + '"' },
      body: JSON.stringify({ ...unit, maxSpacers: unit.maxSpacers + 1 }),
    });
    return answer.status;
  })()`);

describe.each(SIZES)('measuring a unit on a $name', (size) => {
  it('tells both volumes from the readings, and writes them over what was read, not over a newer unit', async () => {
    const page = await openUnit(size);
    await page.getByText('Nothing to write yet').waitFor();
    await page.getByLabel('Air in hose and gauge').fill('4');
    await enterTry(page, 1, TWO_READINGS);
    const positive = page.getByRole('region', { name: 'Positive volume', exact: true });
    await positive.getByText('Limited most by').waitFor();
    await page.getByRole('button', { name: 'Another try' }).first().click();
    await enterTry(page, 2, TWO_READINGS);
    await positive.getByText('Nine times in ten between').waitFor();
    expect(Number(/(\d+)\smL/.exec(await positive.innerText())?.[1])).toBeCloseTo(227, -1);

    const equalising = tryOf(page, 1, 'last');
    await equalising.getByLabel('Before').fill(EQUALISING.before);
    await equalising.getByLabel('After').fill(EQUALISING.after);
    await page
      .getByRole('region', { name: 'Negative volume', exact: true })
      .getByText('Nine times in ten')
      .waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);

    expect(await changeElsewhere(page)).toBe(200);
    await page.getByRole('button', { name: 'Write into the unit' }).click();
    await page.getByRole('alert').filter({ hasText: 'changed by somebody else' }).waitFor();
    await page.getByRole('button', { name: 'Read the unit again' }).click();
    await page.getByRole('alert').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Write into the unit' }).click();
    await page.getByText('Written into the unit, marked measured.').waitFor();
  });

  it('says in words why readings without a rise of pressure tell nothing, and refuses a figure at its field', async () => {
    const page = await openUnit(size);
    await page.getByLabel('Air in hose and gauge').fill('4');
    await enterTry(page, 1, { ...TWO_READINGS, held: '61' });
    await page.getByText('The pressure hardly rises').waitFor();

    const held = tryOf(page, 1).getByLabel('Pressure held');
    await held.fill('5000');
    await page.getByRole('alert').first().waitFor();
    expect(await held.getAttribute('aria-invalid')).toBe('true');
  });
});

/** Ring readings, mm, of landings in mixed order: pressure, spacers, reading. */
const LANDINGS = [
  ['71', '2', '118'],
  ['65', '2', '124'],
  ['71', '0', '127'],
  ['65', '2', '125'],
  ['71', '2', '117'],
  ['71', '0', '126'],
] as const;

describe.each(SIZES)('a drop test on a $name', (size) => {
  it('tells what part of the drop goes into the fork, and each set-up against it', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
    await page.getByRole('link', { name: 'Drop test' }).click();
    await page.getByText('No landings yet').waitFor();
    await page.getByRole('button', { name: 'Enter the first landing' }).click();
    for (const [i, [pressure, spacers, reading]] of LANDINGS.entries()) {
      if (i > 0) await page.getByRole('button', { name: 'Another set-up' }).click();
      const row = page.getByRole('group', { name: `Landing ${i + 1}`, exact: true });
      if (i === 0) await row.getByLabel('Height').fill('0.8');
      await row.getByLabel('Pressure').fill(pressure);
      await row.getByLabel('Spacers').fill(spacers);
      await row.getByLabel('Ring reading').fill(reading);
    }
    await page.getByRole('button', { name: 'Work it out' }).click();
    const result = page.getByRole('region', { name: 'What the landings tell' });
    await result.getByText('Nine times in ten between').waitFor();
    expect(await result.getByRole('row').count()).toBe(1 + 3);
    expect(await sidewaysOverflow(page)).toBe(0);
  });

  it('asks for what is missing at its field, and warns where nothing was repeated', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
    await page.getByRole('link', { name: 'Drop test' }).click();
    await page.getByRole('button', { name: 'Enter the first landing' }).click();
    await page.getByRole('button', { name: 'Work it out' }).click();
    const first = page.getByRole('group', { name: 'Landing 1' });
    expect(await first.getByLabel('Height').getAttribute('aria-invalid')).toBe('true');

    const figures = { Height: '0.8', Pressure: '71', Spacers: '2', 'Ring reading': '118' };
    for (const [label, value] of Object.entries(figures)) await first.getByLabel(label).fill(value);
    await page.getByRole('button', { name: 'Same set-up again' }).click();
    const second = page.getByRole('group', { name: 'Landing 2' });
    await second.getByLabel('Pressure').fill('65');
    await second.getByLabel('Ring reading').fill('124');
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.getByText('Do not build on this yet.').waitFor();
    await page.getByText('No set-up was ridden twice').waitFor();
  });
});
