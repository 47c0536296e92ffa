import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';

/** Ten minutes at a careful eight seconds an act, with the reading in between. */
const MOST_ACTS = 75;

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

/** A person at a page, whose every touch and every filled field is counted. */
class Hands {
  acts = 0;

  constructor(readonly page: Page) {}

  async fill(label: string | RegExp, text: string): Promise<void> {
    this.acts += 1;
    await this.page.getByLabel(label, { exact: true }).first().fill(text);
  }

  async choose(label: string, option: string): Promise<void> {
    this.acts += 1;
    await this.page.getByLabel(label, { exact: true }).selectOption({ label: option });
  }

  async press(role: 'button' | 'link', name: string): Promise<void> {
    this.acts += 1;
    await this.page.getByRole(role, { name, exact: true }).click();
  }

  /** Waits for the step to be the one to do now. */
  async at(step: string): Promise<void> {
    await this.page.locator('li[aria-current="step"]', { hasText: step }).waitFor();
    expect(await sidewaysOverflow(this.page)).toBe(0);
  }
}

async function signUp(hands: Hands, name: string): Promise<void> {
  await hands.fill(/^Your name/, 'Mechanic Moss');
  await hands.fill(/^E-mail address/, `moss-${name}@tests.example`);
  await hands.fill(/^Password/, 'a sentence for the first steps');
  await hands.press('button', 'Make an account');
  await hands.fill(/^Name of the team/, `Team of the ${name}`);
  await hands.press('button', 'Start this team');
}

async function unit(hands: Hands, generic: string, [lowest, highest]: [string, string]): Promise<void> {
  await hands.choose('Start from generic values', generic);
  await hands.fill('Lowest pressure', lowest);
  await hands.fill('Highest pressure', highest);
  await hands.fill('Most spacers', '4');
  await hands.press('button', 'Save the unit');
}

describe.each(SIZES)('a new team on a $name', (size) => {
  it('comes from sign-up to its first baseline by the first steps, in few acts', async () => {
    const hands = new Hands(await house.open('/sign-up', size));
    const { page } = hands;
    await signUp(hands, size.name);

    await hands.at('A rider');
    await hands.fill(/^Name/, 'Rider Moss');
    await hands.fill(/^Mass ready to ride/, '78');
    await hands.press('button', 'Save the rider');

    await hands.at('A fork');
    await unit(hands, 'Fork, 170 mm', ['40', '120']);
    await hands.at('A shock');
    await unit(hands, 'Shock, 65 mm', ['100', '300']);

    await hands.at('A bike');
    await hands.fill(/^Name/, 'Moss, enduro');
    await hands.choose('Start from usual figures', 'enduro, 170/165 mm');
    await hands.press('button', 'Save the bike');

    await hands.at('A track');
    await hands.fill(/^Name/, 'Slate Ladder');
    await hands.fill(/^Altitude/, '1450');
    await hands.press('button', 'Save the track');

    await hands.at('What is in the bike now');
    for (const [end, pressure] of [
      ['Fork', '70'],
      ['Shock', '185'],
    ] as const) {
      hands.acts += 2;
      const group = page.getByRole('group', { name: end, exact: true });
      await group.getByLabel(/^Pressure/).fill(pressure);
      await group.getByLabel(/^Spacers/).fill('1');
    }
    await hands.fill(/^Reason/, 'As found.');
    await hands.press('button', 'Save this set-up');

    await hands.at('A first run');
    await hands.press('link', 'Log a run');
    await hands.fill('Fork ring', '131');
    await hands.fill('Shock ring', '48');
    await hands.press('button', 'Save the run');
    await page.getByRole('region', { name: 'Last runs' }).getByRole('listitem').first().waitFor();

    await hands.press('link', 'Tracks');
    await hands.press('link', 'Slate Ladder');
    const baseline = page.getByRole('region', { name: 'Baselines' });
    await baseline.getByText(/from 1\srun\./).waitFor();
    expect(await baseline.getByText('Evidence:').count()).toBe(2);
    await page.getByRole('heading', { level: 1, name: 'Slate Ladder' }).waitFor();
    expect(await sidewaysOverflow(page)).toBe(0);
    expect(hands.acts).toBeLessThanOrEqual(MOST_ACTS);
  });
});

it('leads on without a run, and without a shock: to a baseline that says it rests on physics alone', async () => {
  const hands = new Hands(await house.open('/sign-up', SIZES[1]));
  await signUp(hands, 'hardtail');
  await hands.at('A rider');
  await hands.fill(/^Name/, 'Rider Moss');
  await hands.fill(/^Mass ready to ride/, '78');
  await hands.press('button', 'Save the rider');
  await hands.at('A fork');
  await unit(hands, 'Fork, 140 mm', ['40', '120']);
  await hands.at('A shock');
  await hands.press('button', 'Our bikes have no air shock');
  await hands.at('A bike');
  await hands.fill(/^Name/, 'Moss, trail');
  await hands.choose('Start from usual figures', 'trail, 140/130 mm');
  await hands.press('button', 'Save the bike');
  await hands.at('A track');
  await hands.fill(/^Name/, 'Slate Ladder');
  await hands.fill(/^Altitude/, '450');
  await hands.press('button', 'Save the track');
  await hands.at('What is in the bike now');
  await hands.fill(/^Pressure/, '75');
  await hands.fill(/^Spacers/, '1');
  await hands.fill(/^Reason/, 'As found.');
  await hands.press('button', 'Save this set-up');
  await hands.at('A first run');
  await hands.press('button', 'Go on without a run');
  await hands.page.getByRole('heading', { name: 'All there' }).waitFor();
  await hands.press('link', 'See the baseline');
  await hands.page.getByText('physics only', { exact: true }).waitFor();
});

it('shows a new team in its empty pit where to begin', async () => {
  const hands = new Hands(await house.open('/sign-up', SIZES[0]));
  await signUp(hands, 'pit');
  await hands.at('A rider');
  await hands.press('link', 'Pit');
  await hands.page.getByRole('heading', { name: 'No bikes yet' }).waitFor();
  await hands.press('link', 'First steps');
  await hands.at('A rider');
});
