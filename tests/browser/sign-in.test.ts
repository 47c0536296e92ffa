import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, SIZES, type House } from './support/pages.js';
import { COACH, MECHANIC, RIDER, type Person } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

async function signIn(page: Page, { email, password }: Person): Promise<void> {
  await page.getByLabel('E-mail address').fill(email);
  await page.getByRole('textbox', { name: 'Password' }).fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

describe.each(SIZES)('signing in on a $name', (size) => {
  it.each([
    ['the mechanic', MECHANIC, 'Pit'],
    ['the coach', COACH, 'Tracks'],
    ['the rider', RIDER, 'Fern, enduro'],
  ])('leads %s to their own first page', async (_, who, heading) => {
    const page = await house.open('/', size);
    await signIn(page, who);
    await page.getByRole('heading', { level: 1, name: heading }).waitFor();
  });

  it('says that address or password is wrong, and not which', async () => {
    const page = await house.open('/', size);
    await signIn(page, { ...RIDER, password: 'not the password' });
    await page.getByRole('alert').getByText('The e-mail address or the password is wrong.').waitFor();
  });

  it('is asked for before any page of a team, and leads back to that page', async () => {
    const first = await house.enter(COACH, size);
    await first.getByRole('heading', { level: 1, name: 'Tracks' }).waitFor();
    const pit = new URL(first.url()).pathname.replace('/tracks', '/pit');
    const page = await house.open(pit, size);
    await signIn(page, COACH);
    await page.getByRole('heading', { level: 1, name: 'Pit' }).waitFor();
  });

  it('ends with signing out: the way back asks again', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('heading', { level: 1, name: 'Pit' }).waitFor();
    const pit = page.url();
    await page.getByText('Workshop').click();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    await page.goto(pit);
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    expect(await page.getByRole('navigation').count()).toBe(0);
  });
});
