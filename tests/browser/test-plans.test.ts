import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House, type Size } from './support/pages.js';
import { COACH, MECHANIC, RIDER } from './support/team.js';

/** What a gloved thumb hits, CSS px. */
const LEAST_TARGET_PX = 48;

let house: House;
beforeAll(async () => {
  house = await openHouse();
  await secondSetup();
});
afterAll(() => house.close());

/** A softer fork, so that there are two set-ups to try. */
async function secondSetup(): Promise<void> {
  const page = await house.enter(MECHANIC, SIZES[0]);
  await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
  await page.getByRole('link', { name: 'Change the set-up' }).click();
  await page.getByRole('group', { name: 'Fork' }).getByLabel('Pressure').fill('66');
  await page.getByLabel('Reason').fill('To be tried.');
  await page.getByRole('button', { name: 'Save this set-up' }).click();
  await page.getByRole('heading', { name: 'What came of it?' }).waitFor();
}

/** Makes a plan of two runs of each, as the coach, from the page of the track. */
async function makePlan(size: Size, name: string, isBlind: boolean): Promise<Page> {
  const page = await house.enter(COACH, size);
  await page.getByRole('link', { name: 'Slate Ladder' }).click();
  await page.getByRole('link', { name: 'Plan a test' }).click();
  await page.getByRole('heading', { level: 1, name: 'Plan a test' }).waitFor();
  await page.getByLabel('What it is to tell').fill(name);
  await page.getByLabel('Rider Fern').check();
  const change = page.getByRole('group', { name: 'Change 1' });
  await change.getByLabel('name').fill('Five psi more');
  await change.getByLabel('Set-up of Fern, enduro').selectOption({ index: 2 });
  await page.getByLabel('Runs of each, by each rider').fill('2');
  if (isBlind) await page.getByLabel(/^Blind/).check();
  await page.getByText('More about the order').click();
  await page.getByLabel('Warm-up runs first').fill('0');
  await page
    .getByText(/^With your scatter of \d\.\d+\s%, 2\sruns of each would tell \d+\.\d+\s% 8 times in 10/)
    .waitFor();
  expect(await sidewaysOverflow(page)).toBe(0);
  await page.getByRole('button', { name: 'Make the plan' }).click();
  await page.getByRole('heading', { level: 1, name }).waitFor();
  return page;
}

/** Logs the next run, and returns the letter that was ridden. */
async function logRun(page: Page, position: number, time: string, mistake?: string): Promise<string> {
  const save = page.getByRole('button', { name: new RegExp(`^Save run ${position} on`) });
  await save.waitFor();
  const letter = (await save.innerText()).slice(-1);
  await page.getByLabel('Time', { exact: true }).fill(time);
  await page.getByLabel('Fork ring').fill('141');
  await page
    .getByRole('group', { name: /Support on big hits/ })
    .getByRole('radio', { name: '4' })
    .check();
  if (mistake !== undefined) {
    await page.getByRole('radio', { name: 'spoilt by a mistake' }).check();
    await page.getByLabel('What happened').fill(mistake);
  }
  await save.click();
  await save.waitFor({ state: 'detached' });
  return letter;
}

describe.each(SIZES)('a test plan on a $name', (size) => {
  it('is made, ridden, voided, closed and compared by the coach', async () => {
    const page = await makePlan(size, `Does more air help, ${size.name}?`, false);
    const order = page.getByRole('region', { name: 'The whole order' });
    await order.getByRole('listitem').nth(3).waitFor();
    expect(await order.getByRole('listitem').count()).toBe(4);

    await logRun(page, 1, '3:07.4');
    await order.getByText('done, 3:07.4').waitFor();
    await logRun(page, 2, '3:09.0', 'Slid out');
    await order.getByText('void: Slid out').waitFor();
    // The void run is ridden again: one more in the order.
    await page.getByRole('heading', { name: 'Next: run 3 of 5' }).waitFor();

    await page.getByRole('button', { name: 'Void run 1' }).click();
    const why = page.getByRole('group', { name: 'Void run 1' });
    await why.getByLabel('Why it does not count').fill('Held up');
    await why.getByRole('button', { name: 'Void the run' }).click();
    await order.getByText('void: Held up').waitFor();
    await page.getByRole('heading', { name: 'Next: run 3 of 6' }).waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);

    for (const [i, time] of ['3:07.0', '3:08.1', '3:06.2', '3:07.7'].entries()) {
      await page.getByLabel('Ladder', { exact: true }).fill(`1:1${i}.5`);
      await logRun(page, 3 + i, time);
    }
    await page.getByRole('heading', { name: 'Every run is ridden.' }).waitFor();
    await page.getByRole('button', { name: 'Close the plan' }).click();
    await page.getByLabel('Why it is closed').fill('All ridden.');
    await page.getByRole('button', { name: 'Yes, close it' }).click();
    await page.getByText(/^Closed .*“All ridden\.”$/).waitFor();

    await page.getByRole('link', { name: 'What it told' }).click();
    const verdict = page.getByRole('region', { name: 'Verdict' });
    await verdict.getByText(/Five psi more against/).waitFor();
    expect(await verdict.innerText()).toMatch(/cannot tell yet|no practical difference|faster|slower/i);
    const sections = page.getByRole('region', { name: 'Where on the track' });
    await sections.getByRole('figure', { name: /^Where on the track: .*Five psi more/ }).waitFor();
    expect(await sections.getByRole('listitem').allInnerTexts()).toEqual([
      expect.stringMatching(/^Ladder: /),
    ]);
    const dots = page.getByRole('figure', { name: 'Rider Fern' });
    await dots.getByRole('group', { name: 'Rider Fern: 6 runs. Arrow keys tell each.' }).focus();
    await page.keyboard.press('ArrowRight');
    expect(await dots.getByRole('status').innerText()).toMatch(/^Run \d+, [AB] · .*3:07\.4.*void$/);
    await dots.getByText('As a table').click();
    expect(await dots.getByRole('row').count()).toBe(1 + 6);
    // Every run was rated the same in one aspect: of equal ratings half count as higher.
    const feel = page.getByRole('region', { name: 'How it felt, beside the time' });
    expect(await feel.getByText('in 50 of 100 pairs').count()).toBe(1);
    expect(await feel.getByText('no pair').count()).toBe(3);
    expect(await page.getByRole('region', { name: 'Void runs' }).innerText()).toContain('of');
    expect(await sidewaysOverflow(page)).toBe(0);
  });

  it('shows a rider their own next run in a blind plan by its letter, and nothing of the set-ups', async () => {
    const name = `Blind, ${size.name}`;
    await makePlan(size, name, true);
    const page = await house.enter(RIDER, size);
    const plan = page.getByRole('region', { name: 'Your test plan' }).filter({ hasText: name });
    await plan.getByText(/^Ride [AB] next$/).waitFor();
    await page.getByText('A blind plan is under way').waitFor();
    expect(await page.getByText('psi').count()).toBe(0);
    await plan.getByRole('link').click();
    await page.getByText('Your mechanic sets the bike. Ride it as it is given to you.').waitFor();
    expect(await page.getByText('psi').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Close the plan' }).count()).toBe(0);
    const save = page.getByRole('button', { name: /^Save run 1/ });
    await save.waitFor();
    expect((await save.boundingBox())?.height).toBeGreaterThanOrEqual(LEAST_TARGET_PX);
    await logRun(page, 1, '3:05.0');
    await page.getByRole('region', { name: 'The whole order' }).getByText('done, 3:05.0').waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);

    const coach = await house.enter(COACH, size);
    await coach.getByRole('link', { name: 'Plans', exact: true }).click();
    await coach.getByRole('region', { name: 'Open plans' }).getByText('1 of 4 runs').first().waitFor();
    await coach.getByRole('link', { name }).click();
    await coach.getByRole('button', { name: 'Close the plan' }).click();
    await coach.getByRole('button', { name: 'Yes, close it' }).click();
    await coach.getByText(/^Closed /).waitFor();
    await page.reload();
    await page
      .getByText(/Five psi more/)
      .first()
      .waitFor();
  });
});

it('is closed only once it was read again after its last run: its maker is nobody else who has changed it', async () => {
  const page = await makePlan(SIZES[0], 'To be closed at once', false);
  for (const [i, time] of ['3:07.0', '3:08.1', '3:06.2'].entries()) await logRun(page, 1 + i, time);
  let letRead = () => {};
  const held = new Promise<void>((resolve) => (letRead = resolve));
  await page.route(/\/test-plans\/[^/]+$/, async (route) => {
    await held;
    await route.continue();
  });
  await logRun(page, 4, '3:07.7');
  await page.getByRole('heading', { name: 'Every run is ridden.' }).waitFor();
  await page.getByRole('button', { name: 'Close the plan' }).click();
  const close = page.getByRole('button', { name: 'Yes, close it' });
  await close.waitFor();
  expect(await close.isEnabled()).toBe(false);
  letRead();
  await close.click();
  await page.getByText(/^Closed /).waitFor();
});

it('leads from a closed plan to the set-up it tried, and from the decision back to the plan', async () => {
  const coach = await makePlan(SIZES[0], 'To be taken over', false);
  await coach.getByRole('button', { name: 'Close the plan' }).click();
  await coach.getByRole('button', { name: 'Yes, close it' }).click();
  await coach.getByText(/^Closed /).waitFor();
  const comparison = `${new URL(coach.url()).origin}${new URL(coach.url()).pathname}/comparison`;

  const page = await house.enter(MECHANIC, SIZES[0]);
  await page.goto(comparison);
  const ways = page.getByRole('region', { name: 'Make it the set-up' });
  await ways.getByRole('link', { name: /^[AB] · Five psi more for Fern, enduro$/ }).click();
  await page.getByRole('heading', { level: 1, name: 'Set up Fern, enduro' }).waitFor();
  await page.getByText(/^Starts from revision \d+, and rests on the test plan/).waitFor();
  await page.getByLabel('Reason').fill('Five psi more held up.');
  await page.getByRole('button', { name: 'Save this set-up' }).click();
  await page.waitForURL(/\/bikes\/[^/]+$/);

  await page.goto(comparison.replace(/\/test-plans\/.*/, '/decisions'));
  const decision = page.getByRole('article').filter({ hasText: 'Five psi more held up.' });
  await decision.getByRole('link', { name: 'from a test plan' }).click();
  await page.waitForURL(comparison);
});

it('leads to the open plan from the pit, and compares set-ups that were chosen afterwards', async () => {
  await makePlan(SIZES[0], 'From the pit', false);
  const page = await house.enter(MECHANIC, SIZES[0]);
  await page.getByRole('link', { name: 'From the pit: plan 0 of 4 runs' }).click();
  await page.getByRole('heading', { level: 1, name: 'From the pit' }).waitFor();
  await page.getByRole('link', { name: 'Plans', exact: true }).click();
  await page.getByRole('link', { name: 'Compare what was ridden' }).click();
  await page.getByLabel('Bike', { exact: true }).selectOption('Fern, enduro');
  await page.getByLabel('Track').selectOption('Slate Ladder');
  await page.getByLabel('Compared with').selectOption({ index: 1 });
  await page.getByText(/take a verdict as a hint, and plan a test of it/).waitFor();
});
