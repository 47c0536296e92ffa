import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Caller } from './support/caller.js';
import { openLine } from './support/line.js';
import { openHouse, sidewaysOverflow, SIZES, type House } from './support/pages.js';
import { BIKE, COACH, FORK, MECHANIC, RIDER, SHOCK } from './support/team.js';

interface Item {
  readonly id: string;
  readonly name: string;
}

let house: House;
let coach: Caller;
let mechanic: Caller;
let team: string;
let trackId: string;
let rider: string;
let guest: string;

beforeAll(async () => {
  house = await openHouse();
  coach = new Caller(house.address);
  const { memberships } = await coach.post<{ memberships: { teamId: string }[] }>('/sign-ins', COACH);
  team = `/teams/${memberships[0]?.teamId}`;
  const first = async (things: string) =>
    (await coach.get<{ items: Item[] }>(`${team}/${things}`)).items[0]?.id ?? '';
  trackId = await first('tracks');
  rider = await first('riders');
  const guests = { name: 'Rider Gorse', readyMassKg: 81, readyMassSource: 'measured' };
  mechanic = new Caller(house.address);
  await mechanic.post('/sign-ins', MECHANIC);
  guest = (await mechanic.post<Item>(`${team}/riders`, guests)).id;
});
afterAll(() => house.close());

/** A day counted from today, as the API and as the pages write it. */
function inDays(days: number): { day: string; said: string } {
  const date = new Date();
  date.setDate(date.getDate() + days);
  const two = (part: number) => String(part).padStart(2, '0');
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  const said = new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short' });
  return { day, said: said.format(date) };
}

const plan = (session: object) =>
  coach.post(`${team}/planned-sessions`, { trackId, startsAt: '09:30', riderIds: [rider], ...session });
/** A test plan of two set-ups of a bike that differ by three psi. */
async function testPlan(name: string, riderId: string, bikeId: string): Promise<string> {
  const setups: Item[] = [];
  for (const pressurePsi of [71, 74]) {
    const fork = { pressurePsi, spacers: 2, reboundClicks: 8, compressionClicks: 5 };
    const shock = { pressurePsi: 185, spacers: 1 };
    setups.push(await mechanic.post(`${team}/setups`, { bikeId, fork, shock, reason: 'To be tried.' }));
  }
  const arms = setups.map(({ id: setupId }, i) => ({ name: `Set-up ${i}`, setups: [{ bikeId, setupId }] }));
  const riders = [{ riderId, bikeId }];
  const made = { name, trackId, riders, arms, runsAnArm: 2, warmUps: 0 };
  return (await mechanic.post<Item>(`${team}/test-plans`, made)).id;
}

const next = (page: Page) => page.getByRole('region', { name: 'Your next session' });

describe('the next session on the phone of a rider', () => {
  it('says that none is planned, in the room that it will have', async () => {
    for (const size of SIZES) {
      const page = await house.enter(RIDER, size);
      await page.getByText('No session is planned for you.').waitFor();
    }
  });

  it('is the first that they ride in, with track and what is ridden; also without signal', async () => {
    const { day, said } = inDays(3);
    await plan({ day: inDays(-1).day, note: 'Was yesterday.' });
    await plan({ day: inDays(1).day, riderIds: [guest], note: 'Of somebody else.' });
    await plan({ day: inDays(5).day, note: 'Later.' });
    await plan({ day, riderIds: [guest, rider], note: 'Two slow runs first.' });
    const line = await openLine(house.address);
    for (const size of SIZES) {
      const page = await house.enterOver(line.address, RIDER, size);
      const shows = async () => {
        await next(page).getByText(`Next session: ${said}, 09:30`).waitFor();
        await next(page).getByText('Slate Ladder · ride and log · Two slow runs first.').waitFor();
        await page.getByText('71', { exact: true }).waitFor();
      };
      await shows();
      expect(await page.getByText(/Was yesterday|Of somebody else|Later\./).count()).toBe(0);
      expect(await sidewaysOverflow(page)).toBe(0);
      await page.evaluate('navigator.serviceWorker.ready');
      line.cut();
      await page.reload();
      await shows();
      line.restore();
      await next(page).getByRole('link').click();
      await page.getByRole('heading', { level: 1, name: 'Slate Ladder' }).waitFor();
    }
    await line.close();
  });

  it('is told with the plan that is ridden in it, and leads there', async () => {
    const { items: bikes } = await coach.get<{ items: Item[] }>(`${team}/bikes`);
    const bikeId = bikes.find(({ name }) => name === 'Fern, enduro')?.id ?? '';
    const testPlanId = await testPlan('Three psi more', rider, bikeId);
    const { day, said } = inDays(2);
    await plan({ day, startsAt: '14:00', testPlanId });
    for (const size of SIZES) {
      const page = await house.enter(RIDER, size);
      const own = page.getByRole('region', { name: 'Your test plan' });
      await own.getByText(new RegExp(`^Ride [AB] next · ${said}, 14:00$`)).waitFor();
      await own.getByText('Three psi more').waitFor();
      // It is said once.
      expect(await next(page).count()).toBe(0);
      expect(await sidewaysOverflow(page)).toBe(0);
      await own.getByRole('link').click();
      await page.getByRole('heading', { level: 1, name: 'Three psi more' }).waitFor();
    }
  });

  it('does not tell a plan as ridden whose next run could not be read', async () => {
    for (const size of SIZES) {
      const page = await house.enterOver('about:blank', RIDER, size);
      await page.route('**/progress', (route) => route.fulfill({ status: 500 }));
      await page.goto(house.address);
      const own = page.getByRole('region', { name: 'Your test plan' });
      await own.getByText('Which run is next could not be read.').waitFor();
      await own.getByText(/^Three psi more · /).waitFor();
      expect(await page.getByText('Every run is ridden.').count()).toBe(0);
    }
  });

  it('does not name a plan of others that the session is for, and leads to the track', async () => {
    const unit = async (kind: object) => (await mechanic.post<Item>(`${team}/spring-units`, kind)).id;
    const [forkUnitId, shockUnitId] = [
      await unit({ ...FORK, name: 'Fork of Gorse' }),
      await unit({ ...SHOCK, name: 'Shock of Gorse' }),
    ];
    const bike = { ...BIKE, name: 'Gorse, enduro', riderId: guest, forkUnitId, shockUnitId };
    const bikeId = (await mechanic.post<Item>(`${team}/bikes`, bike)).id;
    const testPlanId = await testPlan('Of Gorse alone', guest, bikeId);
    await plan({ day: inDays(1).day, startsAt: '08:00', riderIds: [guest, rider], testPlanId });
    for (const size of SIZES) {
      const page = await house.enter(RIDER, size);
      await next(page).getByText('Slate Ladder · a test plan', { exact: true }).waitFor();
      expect(await next(page).getByRole('link').getAttribute('href')).toMatch(/\/tracks\//);
      expect(await page.getByText('Of Gorse alone').count()).toBe(0);
      // The own plan stands before it.
      await page.getByRole('region', { name: 'Your test plan' }).getByText('Three psi more').waitFor();
    }
  });
});
