import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { MECHANIC } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

describe.each(SIZES)('the stock of spacers on a $name', (size) => {
  it('is counted, refused where it would be negative, and reversed', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Team', exact: true }).click();
    await page.getByRole('link', { name: 'Spacers', exact: true }).click();
    const inStock = page
      .getByRole('row')
      .filter({ has: page.getByRole('rowheader', { name: 'Fork, 10.0 mL' }) });
    await inStock.waitFor();
    await page.getByLabel('Size').selectOption({ label: 'Fork, 10.0 mL' });
    // Another count than the one that is there: its figure shows that it was taken.
    const counted = size.name === 'laptop' ? 4 : 5;
    await page.getByLabel('How many').fill(String(counted));
    await page.getByRole('button', { name: 'Record it' }).click();
    await inStock.getByText(String(counted), { exact: true }).waitFor();

    await page.getByLabel('What happened').selectOption({ label: 'Put into a unit' });
    await page.getByLabel('How many').fill('9');
    await page.getByRole('button', { name: 'Record it' }).click();
    await page.getByRole('alert').getByText(`9 spacers are wanted, and ${counted} lie in stock.`).waitFor();
    await page.getByLabel('How many').fill('3');
    await page.getByRole('button', { name: 'Record it' }).click();
    await inStock.getByText(String(counted - 3), { exact: true }).waitFor();

    await page
      .getByRole('button', { name: /^Reverse: Put into a unit/ })
      .first()
      .click();
    await page.getByLabel('Why it is wrong').fill('It was the shock.');
    await page.getByRole('button', { name: 'Reverse it' }).click();
    await inStock.getByText(String(counted), { exact: true }).waitFor();
    await page.getByText('“It was the shock.”').first().waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);
  });
});
