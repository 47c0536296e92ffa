import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { COACH, MECHANIC, type Person } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const field = (page: Page, name: string) => page.getByRole('textbox', { name });

async function signIn(page: Page, { email, password }: Person): Promise<void> {
  await page.getByLabel('E-mail address').fill(email);
  await field(page, 'Password').fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

// One password is changed after another: what the last test has set, the next one knows.
let { password } = COACH;

describe.each(SIZES)('a password, on a $name', (size) => {
  it('is changed with the old one, and the other sign-ins end', async () => {
    const other = await house.enter({ ...COACH, password }, size);
    await other.getByRole('heading', { level: 1, name: 'Tracks' }).waitFor();
    const page = await house.enter({ ...COACH, password }, size);
    await page.getByRole('heading', { level: 1, name: 'Tracks' }).waitFor();
    const path = new URL(page.url()).pathname.replace(/(teams\/[^/]+).*/, '$1/sign-ins');
    await page.goto(new URL(path, page.url()).href);
    await page.getByRole('heading', { level: 2, name: 'Password' }).waitFor();
    expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);

    const changed = `${password} anew`;
    await field(page, 'The password as it is').fill('not this sentence');
    await field(page, 'The new password').fill(changed);
    await page.getByRole('button', { name: 'Change the password' }).click();
    await page.getByRole('alert').first().waitFor();
    await page.getByText('Must be the password as it is', { exact: true }).waitFor();

    await field(page, 'The password as it is').fill(password);
    await page.getByRole('button', { name: 'Change the password' }).click();
    await page.getByText('You are signed in here and nowhere else.').waitFor();
    await page.getByText('this one').waitFor();
    await other.reload();
    await signIn(other, { ...COACH, password: changed });
    await other.getByRole('heading', { level: 1, name: 'Tracks' }).waitFor();
    password = changed;
  });

  it('that is forgotten is set anew by the link that a mechanic makes, once', async () => {
    const pit = await house.enter(MECHANIC, size);
    await pit.getByRole('link', { name: 'Team', exact: true }).click();
    await pit.getByRole('link', { name: 'Members' }).click();
    const row = pit.getByRole('row').filter({ hasText: 'coach' });
    await row.getByRole('button', { name: 'Link for a new password' }).click();
    await row.getByRole('button', { name: 'Make the link' }).click();
    const link = new URL(await pit.getByLabel('The link, shown only now').inputValue());
    expect(await sidewaysOverflow(pit)).toBe(0);

    const set = `${password} by link`;
    const page = await house.open(`${link.pathname}${link.hash}`, size);
    await field(page, 'The new password').fill('too short');
    await page.getByRole('button', { name: 'Set it and sign in' }).click();
    await page.getByRole('alert').first().waitFor();
    await field(page, 'The new password').fill(set);
    await page.getByRole('button', { name: 'Set it and sign in' }).click();
    await page.getByRole('heading', { level: 1, name: 'Tracks' }).waitFor();
    password = set;

    const again = await house.open(`${link.pathname}${link.hash}`, size);
    await field(again, 'The new password').fill('somebody else has it');
    await again.getByRole('button', { name: 'Set it and sign in' }).click();
    await again
      .getByRole('alert')
      .getByText(/This link was used/)
      .waitFor();
    const last = await house.open('/', size);
    await signIn(last, { ...COACH, password });
    await last.getByRole('heading', { level: 1, name: 'Tracks' }).waitFor();
  });

  it('is changed with the tokens for scripts in sight, which end with it where that is ticked', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Team', exact: true }).click();
    await page.getByRole('link', { name: 'Tokens' }).click();
    await page.getByLabel('What it is for').fill('Timing import');
    await page.getByLabel('read the team’s data').check();
    await page.getByRole('button', { name: 'Make a token' }).click();
    await page.getByLabel('The token, shown only now').waitFor();
    const path = new URL(page.url()).pathname.replace(/(teams\/[^/]+).*/, '$1/sign-ins');
    await page.goto(new URL(path, page.url()).href);
    await page.getByRole('link', { name: /^1 token in / }).waitFor();
    expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
    const change = async () => {
      // The same again: what is tried here is not the password.
      await field(page, 'The password as it is').fill(MECHANIC.password);
      await field(page, 'The new password').fill(MECHANIC.password);
      await page.getByRole('button', { name: 'Change the password' }).click();
    };
    await change();
    await page.getByText('Your tokens for scripts are still in force.').waitFor();
    await page.getByRole('checkbox', { name: 'End my tokens for scripts as well' }).check();
    await change();
    await page.getByText('No token acts in your name.').waitFor();
    await page.getByRole('link', { name: /^1 token in / }).waitFor({ state: 'detached' });
    await page.getByRole('checkbox').waitFor({ state: 'detached' });
  });
});
