import type { Page } from 'playwright-core';
import { Caller } from './support/caller.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { COACH, MECHANIC, RIDER } from './support/team.js';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

/** How often a page that hears nothing asks, and how long its answer may take on a busy machine. */
const ASKED_EVERY_MS = 15_000;
const ANSWER_LIMIT_MS = 20_000;

const rowOf = (page: Page, bike: string) =>
  page.getByRole('row').filter({ has: page.getByRole('link', { name: bike, exact: true }) });

/** The rider logs a run from elsewhere; what the pit shows of it. */
async function logFromPhone(timeS: number): Promise<void> {
  const phone = new Caller(house.address);
  await phone.post('/sign-ins', RIDER);
  const account = await phone.get<{ memberships: { teamId: string }[] }>('/accounts/current');
  const team = `/teams/${account.memberships[0]?.teamId}`;
  const first = async (things: string, name?: string) => {
    const { items } = await phone.get<{ items: { id: string; name: string }[] }>(`${team}/${things}`);
    return items.find((item) => name === undefined || item.name === name)?.id;
  };
  const [bikeId, trackId] = [await first('bikes', 'Fern, enduro'), await first('tracks')];
  await phone.post(`${team}/runs`, { bikeId, trackId, day: '2026-05-10', timeS });
}

describe('two people at once', () => {
  it("shows a run in the coach's and the mechanic's pit as the phone logs it, and says so politely", async () => {
    const pits = [await house.enter(MECHANIC, SIZES[0]), await house.enter(COACH, SIZES[1])];
    for (const page of pits) {
      await page.getByRole('link', { name: 'Pit' }).click();
      await page.getByText('Live: a change shows here by itself.').waitFor();
      // A page that was loaded anew would have forgotten it.
      await page.evaluate('window.wasHere = true');
    }
    await logFromPhone(171.3);
    for (const page of pits) {
      await rowOf(page, 'Fern, enduro').getByText('2:51.3').waitFor();
      const heard = page.getByRole('status').filter({ hasText: 'A run on Fern, enduro was logged.' });
      await heard.waitFor();
      expect(await page.evaluate('window.wasHere')).toBe(true);
    }
  });

  it('asks by itself while it hears nothing', async () => {
    const page = await house.enter(MECHANIC, SIZES[0]);
    await page.route('**/events', (route) => route.abort());
    await page.reload();
    await page.getByText('Not live at the moment').waitFor();
    await logFromPhone(172.8);
    const row = rowOf(page, 'Fern, enduro');
    await row.getByText('2:52.8').waitFor({ timeout: ASKED_EVERY_MS + ANSWER_LIMIT_MS });
  });
});

describe.each(SIZES)('the pit on a $name', (size) => {
  it('shows what is in every bike, why, and which decision is open', async () => {
    const page = await house.enter(MECHANIC, size);
    const row = rowOf(page, 'Fern, enduro');
    await row.getByText('Open decision').waitFor();
    const text = await row.innerText();
    expect(text).toMatch(/“(Stay higher under braking|Too low in the corners)\.”/);
    expect(text).toMatch(/\d+\s*psi\s*2\s*spacers/);
    expect(await sidewaysOverflow(page)).toBe(0);
  });

  it('says what to pump to today, for the track and the temperature chosen', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
    await page.getByRole('link', { name: 'Change the set-up' }).click();
    await page.getByLabel('Altitude there').fill('420');
    await page.getByLabel('Air temperature there').fill('21');
    await page.getByLabel('Reason').fill('Pumped in the workshop.');
    await page.getByRole('button', { name: 'Save this set-up' }).click();
    await page.getByRole('heading', { name: 'What came of it?' }).waitFor();
    await page.getByRole('link', { name: 'Pit', exact: true }).click();
    const row = rowOf(page, 'Fern, enduro');
    const fork = row.getByText(/^Pump to .*\spsi today$/).first();
    await page.getByText('assumed', { exact: true }).waitFor();
    const usual = await fork.innerText();
    await page.getByLabel('Air temperature there').fill('-10');
    await page.getByText('1450 m · -10 °C').waitFor();
    expect(await fork.innerText()).not.toBe(usual);
    expect(await sidewaysOverflow(page)).toBe(0);

    // What the rider's card says in the same air.
    const phone = await house.enter(RIDER, size);

    await phone.locator('summary', { hasText: 'Change track, bike or temperature' }).click();
    await phone.getByLabel('Air temperature now').fill('-10');
    const psi = /Pump to ([\d.]+)\spsi/.exec(await fork.innerText())?.[1];
    await phone
      .getByText(psi ?? 'none', { exact: true })
      .first()
      .waitFor();
  });

  it('shows a temperature that was typed before in its field, where it can be emptied', async () => {
    const page = await house.enter(MECHANIC, size);
    const temperature = page.getByLabel('Air temperature there');
    await temperature.fill('-10');
    await page.getByText('1450 m · -10 °C').waitFor();
    await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
    await page.getByRole('link', { name: 'Pit', exact: true }).click();
    await page.getByText('1450 m · -10 °C').waitFor();
    expect(await temperature.inputValue()).toBe('-10');
    await temperature.fill('');
    await page.getByText('assumed', { exact: true }).waitFor();
    expect(await temperature.inputValue()).toBe('');
  });

  it('reckons with no temperature that there cannot be, and with none of another track', async () => {
    const hill = `Other hill, ${size.name}`;
    const mechanic = new Caller(house.address);
    await mechanic.post('/sign-ins', MECHANIC);
    const account = await mechanic.get<{ memberships: { teamId: string }[] }>('/accounts/current');
    const place = { name: hill, altitudeM: 900, sections: [] };
    await mechanic.post(`/teams/${account.memberships[0]?.teamId}/tracks`, place);
    const page = await house.enter(MECHANIC, size);
    const temperature = page.getByLabel('Air temperature there');
    await temperature.fill('30');
    await page.getByText('1450 m · 30 °C').waitFor();
    await temperature.fill('90');
    await page.getByText('From -40 °C to 55 °C; till then the usual one counts.').waitFor();
    await page.getByText('assumed', { exact: true }).waitFor();

    const phone = await house.enter(RIDER, size);
    const change = phone.locator('summary', { hasText: 'Change track, bike or temperature' });
    await change.click();
    const now = phone.getByLabel('Air temperature now');
    await now.fill('300');
    await phone.getByText('From -40 °C to 55 °C; till then the usual one counts.').waitFor();
    await change.getByText('assumed', { exact: true }).waitFor();
    expect(await change.innerText()).not.toContain('300');
    await now.fill('31');
    await change.getByText(/Slate Ladder .* 31\s°C/).waitFor();
    await phone.getByLabel('Track', { exact: true }).selectOption({ label: hill });
    await change.getByText(hill).waitFor();
    await change.getByText('assumed', { exact: true }).waitFor();
    expect(await now.inputValue()).toBe('');
  });

  it('says which bike nobody has set up yet, and leads to it', async () => {
    const page = await house.enter(MECHANIC, size);
    const row = rowOf(page, 'Fern, spare');
    await row.getByText('Not set up yet').waitFor();
    await row.getByRole('link', { name: 'Set it up' }).click();
    await page.getByRole('heading', { level: 1, name: 'Set up Fern, spare' }).waitFor();
  });

  it('is worked by the keyboard alone', async () => {
    const page = await house.enter(MECHANIC, size);
    await rowOf(page, 'Fern, enduro').waitFor();
    const focused = () =>
      page.evaluate(
        'document.activeElement.getAttribute("aria-label") ?? document.activeElement.textContent',
      );
    const tabTo = async (name: string) => {
      for (let count = 0; count < 40; count += 1) {
        await page.keyboard.press('Tab');
        if ((await focused()) === name) return;
      }
      throw new Error(`No Tab leads to ${name}`);
    };
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('To the content');
    await page.keyboard.press('Enter');
    await tabTo('Workbench: Fern, enduro');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /Fern, enduro/ }).waitFor();
  });

  it('refuses a pressure outside the limits at its field, and changes nothing', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
    await page.getByRole('link', { name: 'Change the set-up' }).click();
    const fork = page.getByRole('group', { name: 'Fork' });
    await fork.getByLabel('Pressure').fill('400');
    await page.getByLabel('Reason').fill('Too much.');
    await page.getByRole('button', { name: 'Save this set-up' }).click();
    await page.getByRole('alert').waitFor();
    expect(await fork.getByLabel('Pressure').getAttribute('aria-invalid')).toBe('true');
    expect(await fork.innerText()).toContain('120');
  });

  it('makes a new set-up with its reason, and takes it back again', async () => {
    const page = await house.enter(MECHANIC, size);
    await page.getByRole('link', { name: 'Fern, enduro', exact: true }).click();
    await page.getByRole('link', { name: 'Change the set-up' }).click();
    await page.getByRole('group', { name: 'Fork' }).getByLabel('Pressure').fill('68');
    await page.getByLabel('Reason').fill('Softer for the wet.');
    await page.getByRole('button', { name: 'Save this set-up' }).click();
    await page.getByRole('heading', { name: 'What came of it?' }).waitFor();
    await page.getByText('fork −3 psi').first().waitFor();

    await page.getByLabel('What you saw').fill('Too low in the corners.');
    await page.getByRole('button', { name: 'Take it back' }).click();
    await page.getByText('fork +3 psi').first().waitFor();
    const history = page.getByRole('region', { name: 'What was changed, and why' });
    await history.getByText('taken back').first().waitFor();
  });
});
