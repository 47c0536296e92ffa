import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { MECHANIC } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const rowOf = (page: Page, bike: string) =>
  page.getByRole('listitem').filter({ has: page.getByRole('link', { name: bike, exact: true }) });

describe.each(SIZES)('the pit on a $name', (size) => {
  it('shows what is in every bike, why, and which decision is open', async () => {
    const page = await house.enter(MECHANIC, size);
    const row = rowOf(page, 'Fern, enduro');
    await row.getByText('Open decision').waitFor();
    const text = await row.innerText();
    expect(text).toMatch(/“(Stay higher under braking|Too low in the corners)\.”/);
    expect(text).toMatch(/\d+\s*psi\s*2\s*spacers/);
    expect(await sidewaysOverflow(page)).toBe(0);
  });

  it('says which bike nobody has set up yet, and leads to it', async () => {
    const page = await house.enter(MECHANIC, size);
    const row = rowOf(page, 'Fern, spare');
    await row.getByText('Not set up yet').waitFor();
    await row.getByRole('link', { name: 'Set it up' }).click();
    await page.getByRole('heading', { level: 1, name: 'Set up Fern, spare' }).waitFor();
  });

  it('refuses a pressure outside the limits at its field, and changes nothing', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
    await page.getByRole('link', { name: 'Change the set-up' }).click();
    const fork = page.getByRole('group', { name: 'Fork' });
    await fork.getByLabel('Pressure').fill('400');
    await page.getByLabel('Reason').fill('Too much.');
    await page.getByRole('button', { name: 'Save this set-up' }).click();
    await page.getByRole('alert').waitFor();
    expect(await fork.getByLabel('Pressure').getAttribute('aria-invalid')).toBe('true');
    expect(await fork.innerText()).toContain('120');
  });

  it('makes a new set-up with its reason, and takes it back again', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
    await page.getByRole('link', { name: 'Change the set-up' }).click();
    await page.getByRole('group', { name: 'Fork' }).getByLabel('Pressure').fill('68');
    await page.getByLabel('Reason').fill('Softer for the wet.');
    await page.getByRole('button', { name: 'Save this set-up' }).click();
    await page.getByRole('heading', { name: 'What came of it?' }).waitFor();
    await page.getByText('fork −3 psi').first().waitFor();

    await page.getByLabel('What you saw').fill('Too low in the corners.');
    await page.getByRole('button', { name: 'Take it back' }).click();
    await page.getByText('fork +3 psi').first().waitFor();
    const history = page.getByRole('region', { name: 'What was changed, and why' });
    expect(await history.innerText()).toContain('taken back');
  });
});
