import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { COACH, MECHANIC } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const FORK = { laptop: 'Fork of Fern, enduro', phone: 'Fork of Fern, spare' } as const;

describe.each(SIZES)('the service of a unit on a $name', (size) => {
  it('goes from the manual by riding and a service back to a wrong entry taken back', async () => {
    const page = await house.enter(MECHANIC, size);
    const name = FORK[size.name];
    await page.getByRole('link', { name: new RegExp(`^Service of ${name}: .* no service yet$`) }).click();
    await page.getByRole('heading', { level: 1, name: `Service of ${name}` }).waitFor();
    await page.getByLabel('Riding between two services').fill('40');
    await page.getByRole('button', { name: 'Save these figures' }).click();
    await page.getByText('40.0 h', { exact: true }).first().waitFor();

    await page.getByLabel('What', { exact: true }).selectOption({ label: 'Riding that no run tells of' });
    await page.getByRole('button', { name: 'Record it' }).click();
    await page.getByText('Needed').waitFor();
    await page.getByRole('textbox', { name: 'Riding', exact: true }).fill('41,5');
    await page.getByRole('button', { name: 'Record it' }).click();
    await page.getByText(/overdue by 1\.\d h/).waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);

    await page.getByRole('link', { name: 'Pit', exact: true }).click();
    await page.getByText('service due').waitFor();
    await page.getByRole('link', { name: new RegExp(`^Service of ${name}`) }).click();
    await page.getByRole('button', { name: /^Take back: Riding · 41\.5 h/ }).click();
    await page.getByLabel('Why it is wrong').fill('That was the other fork.');
    await page.getByRole('button', { name: 'Take it back' }).click();
    await page.getByText('“That was the other fork.”').waitFor();
    await page
      .getByText(/^(40\.0|39\.\d) h$/)
      .nth(1)
      .waitFor();
    expect(await page.getByText('overdue').count()).toBe(0);
  });

  it('is read by the coach, who records nothing', async () => {
    const page = await house.enter(COACH, size);
    await page.getByRole('link', { name: 'Pit', exact: true }).click();
    await page.getByRole('link', { name: new RegExp(`^Service of ${FORK[size.name]}`) }).click();
    await page.getByRole('heading', { name: 'Since the last service' }).waitFor();
    expect(await page.getByRole('button', { name: 'Record it' }).count()).toBe(0);
  });
});
