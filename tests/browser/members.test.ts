import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { scan } from './support/scan.js';
import { MECHANIC, RIDER } from './support/team.js';

/** What the page is written on, and the grounds of the two schemes: light has no part below 200, dark none above 60. */
const GROUND = `getComputedStyle(document.body).backgroundColor`;
const GROUNDS = {
  light: /^rgb\(2\d\d, 2\d\d, 2\d\d\)$/,
  dark: /^rgb\([1-5]?\d, [1-5]?\d, [1-5]?\d\)$/,
};

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

describe.each(SIZES)('the way of a rider to another phone, made on a $name', (size) => {
  it('is a link as picture and as text that signs the rider in, once', async () => {
    const pit = await house.enter(MECHANIC, size);
    await pit.getByRole('link', { name: 'Team', exact: true }).click();
    await pit.getByRole('link', { name: 'Members' }).click();
    await pit.getByRole('button', { name: 'Sign in on another phone' }).click();
    await pit.getByLabel('The old phone is lost').uncheck();
    await pit.getByRole('button', { name: 'Make the link' }).first().click();
    const picture = pit.getByRole('img', { name: /^The link as a picture/ });
    await picture.waitFor();
    expect(await sidewaysOverflow(pit)).toBe(0);
    const link = await pit.getByLabel('The link, shown only now').inputValue();
    for (const colorScheme of ['light', 'dark'] as const) {
      await pit.emulateMedia({ colorScheme });
      await expect.poll(() => pit.evaluate(GROUND)).toMatch(GROUNDS[colorScheme]);
      expect(await scan(picture), colorScheme).toBe(link);
    }

    const { pathname, hash } = new URL(link);
    const phone = await house.open(`${pathname}${hash}`, SIZES[1]);
    await phone.getByRole('button', { name: 'Sign in' }).click();
    await phone.getByRole('heading', { level: 1, name: 'Fern, enduro' }).waitFor();
    await phone.getByText(RIDER.email).waitFor();

    const other = await house.open(`${pathname}${hash}`, SIZES[1]);
    await other.getByRole('button', { name: 'Sign in' }).click();
    await other
      .getByRole('alert')
      .getByText(/This link was used/)
      .waitFor();
  });
});
