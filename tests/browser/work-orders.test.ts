import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { MECHANIC } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

describe.each(SIZES)('the work at a bike on a $name', (size) => {
  it('goes from a change to a ticked order, and back to an earlier set-up', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
    await page.getByRole('link', { name: 'Change the set-up' }).click();
    const spacers = size.name === 'laptop' ? '3' : '4';
    await page.getByRole('group', { name: 'Fork' }).getByLabel('Spacers').fill(spacers);
    await page.getByLabel('Reason').fill('Firmer at the end.');
    await page.getByRole('button', { name: 'Save this set-up' }).click();
    await page.getByRole('button', { name: 'Make a work order' }).click();
    await page.getByRole('heading', { level: 1, name: 'Work order: Fern, enduro' }).waitFor();

    const steps = page.getByRole('region', { name: /^Fork: / }).getByRole('checkbox');
    const names = await page
      .getByRole('region', { name: /^Fork: / })
      .getByRole('listitem')
      .allInnerTexts();
    const air = names.findIndex((name) => name.includes('Let all air out'));
    const cap = names.findIndex((name) => name.includes('Open the cap'));
    expect(air).toBeGreaterThan(-1);
    expect(cap).toBeGreaterThan(air);
    expect(names[air]).toContain('Caution');
    expect(names.join(' ')).toContain('torque in the unit’s own manual');
    // By the keyboard, as with gloves off and dirty hands.
    await steps.first().focus();
    await page.keyboard.press('Space');
    await page.getByText(/^done by Workshop, /).waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);
    // Black on white, also for who works in the dark.
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const paper = (await page.evaluate(
      '[getComputedStyle(document.body).backgroundColor, getComputedStyle(document.body).color]',
    )) as string[];
    expect(paper).toEqual(['rgb(255, 255, 255)', 'rgb(0, 0, 0)']);
    expect(await page.getByRole('button', { name: 'Print it' }).isVisible()).toBe(false);
    for (const format of ['A4', 'Letter']) {
      expect((await page.pdf({ format })).byteLength).toBeGreaterThan(1_000);
    }
    await page.emulateMedia({ media: 'screen', colorScheme: 'light' });

    await page.getByRole('link', { name: 'Pit', exact: true }).click();
    await page.getByRole('link', { name: /^Fern, enduro: work order: 1 of \d+ steps$/ }).waitFor();

    await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
    const differences = page.getByRole('region', { name: 'Differences between two revisions' });
    await differences.getByText(/^fork \+\d\sspacers?$/).waitFor();
    await page.getByRole('button', { name: 'Go back to this: revision 1', exact: true }).click();
    await page.getByLabel('Why it is put back').fill('It was better before.');
    await page.getByRole('button', { name: 'Go back to this', exact: true }).last().click();
    await page.getByText('“It was better before.”').first().waitFor();
    await page
      .getByText(/not done, and replaced by a newer set-up/)
      .first()
      .waitFor();
  });
});
