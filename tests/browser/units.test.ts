import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { MECHANIC, RIDER } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

async function choose(page: Page, units: readonly string[]) {
  await page.getByLabel('Account and display').click();
  await page.getByRole('link', { name: 'Units' }).click();
  await page.getByRole('heading', { level: 1, name: 'Units' }).waitFor();
  for (const unit of units) await page.getByRole('radio', { name: unit, exact: true }).check();
  await page.getByRole('button', { name: 'Show figures like this' }).click();
}

async function openBike(page: Page) {
  await page.getByRole('link', { name: 'Pit' }).click();
  await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'Fern, enduro' }).waitFor();
}

/** The newest set-up as the API has it. */
const storedPsi = (page: Page) =>
  page.evaluate(async (teamId) => {
    const answer = await fetch(`/api/v1/teams/${teamId}/setups?limit=1`);
    const { items } = (await answer.json()) as { items: { fork: { pressurePsi: number } }[] };
    return items[0]?.fork.pressurePsi;
  }, new URL(page.url()).pathname.split('/')[2]);

describe.each(SIZES)('units on a $name', (size) => {
  it('are chosen once, and every figure follows, typed ones too', async () => {
    const page = await house.enter(MECHANIC, size);
    await choose(page, ['bar', 'lb', '°F']);
    await page.getByText('Figures are shown like this: 4.90 bar, 180.8 lb, 64 °F.').waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);
    await openBike(page);
    const before = (await storedPsi(page)) ?? Number.NaN;
    await page.getByRole('link', { name: 'Change the set-up' }).click();

    const fork = page.getByRole('group', { name: 'Fork', exact: true });
    const pressure = fork.getByLabel('Pressure');
    expect(await pressure.inputValue()).toBe((before * 0.0689475729).toFixed(2).replace(/0$/, ''));
    await page.getByLabel('Reason').fill('Only looked.');
    await page.getByRole('button', { name: 'Save this set-up' }).click();
    await page.getByRole('link', { name: 'Change the set-up' }).click();
    expect(await storedPsi(page)).toBe(before);

    await pressure.fill('5.9');
    await page.getByLabel('Reason').fill('Firmer.');
    await page.getByRole('button', { name: 'Save this set-up' }).click();
    await page.getByText('5.90').first().waitFor();
    expect(await storedPsi(page)).toBeCloseTo(85.5723, 3);

    await page.getByRole('link', { name: 'Change the set-up' }).click();
    await pressure.fill('40');
    await page.getByLabel('Reason').fill('Too much.');
    await page.getByRole('button', { name: 'Save this set-up' }).click();
    await page
      .getByText(/at most 8\.27\sbar/)
      .first()
      .waitFor();
    await choose(page, ['psi', 'kg', '°C']);
    await page.getByText('Figures are shown like this: 71 psi, 82.0 kg, 18 °C.').waitFor();
  });

  it('are the rider’s own on the phone, and after the page was opened again', async () => {
    const page = await house.enter(RIDER, size);
    await choose(page, ['bar']);
    await page.getByText(/^Figures are shown like this: 4\.90\sbar/).waitFor();
    await page.getByRole('link', { name: 'My bike' }).click();
    await page.getByText('bar', { exact: true }).first().waitFor();
    await page.reload();
    await page.getByText('bar', { exact: true }).first().waitFor();
    expect(await page.getByText('psi', { exact: true }).count()).toBe(0);
    await choose(page, ['psi']);
    await page.getByText(/^Figures are shown like this: 71\spsi/).waitFor();
  });

  it('are stepped on the workbench in steps that a pump shows', async () => {
    const page = await house.enter(MECHANIC, size);
    await choose(page, ['bar']);
    await page.getByText(/^Figures are shown like this: 4\.90\sbar/).waitFor();
    await openBike(page);
    await page
      .getByRole('link', { name: /workbench/i })
      .first()
      .click();
    const pressure = page.getByRole('group', { name: 'Pressure', exact: true }).getByRole('textbox').first();
    await pressure.fill('5');
    await pressure.press('ArrowUp');
    expect(await pressure.inputValue()).toBe('5.05');
    await pressure.press('ArrowDown');
    expect(await pressure.inputValue()).toBe('5');
    await choose(page, ['psi']);
    await page.getByText(/^Figures are shown like this: 71\spsi/).waitFor();
  });
});
