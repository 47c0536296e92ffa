import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { refusals } from './support/judge.js';
import { openHouse, sidewaysOverflow, SIZES, type House, type Size } from './support/pages.js';
import { MECHANIC, RIDER } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const heading = (page: Page, name: string) => page.getByRole('heading', { level: 1, name }).waitFor();

async function openTeam(page: string, size: Size): Promise<Page> {
  const window = await house.enter(MECHANIC, size);
  await window.getByRole('link', { name: 'Team', exact: true }).click();
  await window
    .getByRole('navigation', { name: 'Data of the team' })
    .getByRole('link', { name: page })
    .click();
  await heading(window, page);
  return window;
}

describe.each(SIZES)('on a $name', (size) => {
  it('the mechanic reads who changed what, and narrows it down to one kind of record', async () => {
    const page = await openTeam('Audit', size);
    await page.getByText('rider added: Rider Fern').waitFor();
    await page.getByLabel('Record').selectOption('track');
    await page.getByText('track added: Slate Ladder').waitFor();
    expect(await page.getByText('rider added').count()).toBe(0);
    await page.getByLabel('Record').selectOption('test-plan');
    await page.getByText('No change fits this choice.').waitFor();
    expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
  });

  it('the mechanic makes a token, sees it once, and revokes it', async () => {
    const page = await openTeam('Tokens', size);
    const name = `Timing import, ${size.name}`;
    await page.getByLabel('What it is for').fill(name);
    await page.getByLabel('log and import runs').check();
    await page.getByRole('button', { name: 'Make a token' }).click();
    expect(await page.getByLabel('The token, shown only now').inputValue()).toMatch(/^lml_/);
    await page.getByText(name).waitFor();
    expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
    await page.reload();
    await page.getByText(name).waitFor();
    expect(await page.getByLabel('The token, shown only now').count()).toBe(0);
    await page.getByRole('button', { name: 'Revoke' }).click();
    await page.getByRole('button', { name: 'Yes, revoke' }).click();
    await page.getByText('No script works with').waitFor();
  });

  it('a rider ends their other sign-ins, then all of them, by keyboard', async () => {
    const other = await house.enter(RIDER, size);
    await heading(other, 'Fern, enduro');
    const page = await house.enter(RIDER, size);
    await page.getByText(RIDER.email).first().focus();
    await page.keyboard.press('Enter');
    await page.getByRole('link', { name: 'Sign-ins and password' }).focus();
    await page.keyboard.press('Enter');
    await heading(page, 'Sign-ins and password');
    await page.getByText('this one').waitFor();
    expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
    await page.getByRole('button', { name: 'End it' }).first().waitFor();
    while ((await page.getByRole('button', { name: 'End it' }).count()) > 0) {
      const before = await page.getByRole('button', { name: 'End it' }).count();
      await page.getByRole('button', { name: 'End it' }).first().focus();
      await page.keyboard.press('Enter');
      await expect.poll(() => page.getByRole('button', { name: 'End it' }).count()).toBe(before - 1);
    }
    await other.reload();
    await heading(other, 'Sign in');
    await page.getByRole('button', { name: 'Sign out everywhere' }).focus();
    await page.keyboard.press('Enter');
    await heading(page, 'Sign in');
  });
});

describe('the content security policy', () => {
  it('keeps out a script and a style that somebody has got into a page', async () => {
    const page = await house.enter(MECHANIC, SIZES[0]);
    await heading(page, 'Pit');
    await page.evaluate(`{
      const add = (kind, text) => document.body.appendChild(Object.assign(document.createElement(kind), { textContent: text }));
      add('script', 'window.wasRun = true');
      add('style', 'h1 { color: rgb(1, 2, 3) !important }');
      document.body.insertAdjacentHTML('beforeend', '<img src="data:," onerror="window.wasRun = true">');
      document.body.insertAdjacentHTML('beforeend', '<p id="styled" style="color: rgb(1, 2, 3)">x</p>');
    }`);
    await page.waitForTimeout(300);
    expect(await page.evaluate('window.wasRun')).toBeUndefined();
    const colours = await page.evaluate(
      `['h1', '#styled'].map((place) => getComputedStyle(document.querySelector(place)).color)`,
    );
    expect(colours).not.toContain('rgb(1, 2, 3)');
  });

  it('is not broken by who chooses another appearance', async () => {
    const page = await house.enter(MECHANIC, SIZES[0]);
    const broken = refusals(page);
    await page.locator('summary', { hasText: 'Workshop' }).click();
    for (const scheme of ['dark', 'light']) {
      await page.getByLabel('Appearance').selectOption(scheme);
      await page.locator(`html[data-mantine-color-scheme="${scheme}"]`).waitFor();
    }
    expect(broken).toEqual([]);
  });

  it('is broken by no page', async () => {
    const page = await house.enter(MECHANIC, SIZES[0]);
    const broken = refusals(page);
    await heading(page, 'Pit');
    const team = new URL(page.url()).pathname.replace(/\/pit$/, '');
    const visited = new Set<string>();
    const waiting = [
      `${team}/pit`,
      `${team}/tracks`,
      `${team}/team/audit`,
      `${team}/sign-ins`,
      '/join',
      '/nothing',
    ];
    for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
      visited.add(path);
      await page.goto(new URL(path, page.url()).href);
      await page
        .getByRole('heading')
        .first()
        .waitFor()
        .catch(() => broken.push(`${page.url()}: no page`));
      const links = (await page.evaluate(
        `[...document.querySelectorAll('a[href^="/"]:not([download])')].map((link) => new URL(link.href).pathname)`,
      )) as string[];
      for (const link of links) if (!visited.has(link) && !waiting.includes(link)) waiting.push(link);
    }
    expect(visited.size).toBeGreaterThan(15);
    expect(broken).toEqual([]);
    // Every page is loaded anew, one after another.
  }, 180_000);
});
