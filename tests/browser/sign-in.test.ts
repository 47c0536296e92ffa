import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, SIZES, type House } from './support/pages.js';
import { COACH, MECHANIC, RIDER } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

describe.each(SIZES)('signing in on a $name', (size) => {
  it.each([
    ['the mechanic', MECHANIC, 'Pit'],
    ['the coach', COACH, 'Tracks'],
    ['the rider', RIDER, 'Fern, enduro'],
  ])('leads %s to their own first page', async (_, who, heading) => {
    const page = await house.signIn(who, size);
    await page.getByRole('heading', { level: 1, name: heading }).waitFor();
  });

  it('says that address or password is wrong, and not which', async () => {
    const page = await house.open('/', size);
    await page.getByLabel('E-mail address').fill(RIDER.email);
    await page.getByRole('textbox', { name: 'Password' }).fill('not the password');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByRole('alert').getByText('The e-mail address or the password is wrong.').waitFor();
  });

  it('is asked for before any page of a team, and leads back to that page', async () => {
    const first = await house.signIn(COACH, size);
    const address = new URL(first.url().replace('/tracks', '/pit'));
    const page = await house.open(address.pathname, size);
    await page.getByLabel('E-mail address').fill(COACH.email);
    await page.getByRole('textbox', { name: 'Password' }).fill(COACH.password);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByRole('heading', { level: 1, name: 'Pit' }).waitFor();
  });

  it('ends with signing out: the way back asks again', async () => {
    const page = await house.signIn(MECHANIC, size);
    const pit = page.url();
    await page.getByText('Workshop').click();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    await page.goto(pit);
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    expect(await page.getByRole('navigation').count()).toBe(0);
  });
});
