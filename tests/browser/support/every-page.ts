import type { Page } from 'playwright-core';
import { Caller } from './caller.js';
import { MECHANIC } from './team.js';

interface Item {
  readonly id: string;
}

/** What stands in an address for each of its parts. A new part fails the test until it is named here. */
export type Places = Readonly<Record<string, string>>;

/** The addresses of all pages, as the router of the running dashboard knows them; no list can forget one. */
export const routePaths = (page: Page): Promise<string[]> =>
  page.evaluate(
    `[...new Set(Object.keys(window.__TSR_ROUTER__.routesByPath).map((path) => path.replace(/(.)\\/$/, '$1')))]`,
  );

export function addressOf(path: string, places: Places): string {
  const filled = path.replaceAll(/\$(\w+)/g, (_, part: string) => {
    const place = places[part];
    if (place === undefined)
      throw new Error(`Say in every-page.test.ts what stands for $${part} in ${path}.`);
    return place;
  });
  // Pages that ask which bike, end and track they are about; others pass over it.
  const search = ['bikeId', 'trackId'].map((part) => `${part}=${places[part]}`);
  return path.includes('$teamId') ? `${filled}?${[...search, 'end=fork'].join('&')}` : filled;
}

/** What somebody types who holds a key down: nothing breaks it but the page. */
const WITHOUT_SPACE = 'x'.repeat(170);

const NEVER_PAST = '2199-05-09';

/** Something of everything in the team, and a place for each part of an address. */
export async function placesIn(address: string): Promise<Places> {
  const mechanic = new Caller(address);
  const { memberships } = await mechanic.post<{ memberships: { teamId: string }[] }>('/sign-ins', MECHANIC);
  const teamId = memberships[0]?.teamId ?? '';
  const team = `/teams/${teamId}`;
  const first = async (things: string): Promise<string> =>
    (await mechanic.get<{ items: Item[] }>(`${team}/${things}`)).items.at(-1)?.id ?? '';
  const [bikeId, trackId, riderId, unitId] = [
    await first('bikes'),
    await first('tracks'),
    await first('riders'),
    await first('spring-units'),
  ];
  const fork = (spacers: number) => ({ pressurePsi: 71, spacers, reboundClicks: 8, compressionClicks: 5 });
  const setup = (spacers: number) => ({
    bikeId,
    fork: fork(spacers),
    shock: { pressurePsi: 185, spacers: 1 },
    reason: `Stay higher under braking. ${WITHOUT_SPACE}`,
    trackId,
  });
  const setups = [
    await mechanic.post<Item>(`${team}/setups`, setup(3)),
    await mechanic.post<Item>(`${team}/setups`, setup(1)),
  ];
  const arm = (name: string, of: Item | undefined) => ({ name, setups: [{ bikeId, setupId: of?.id }] });
  const plan = await mechanic.post<Item>(`${team}/test-plans`, {
    name: `Does one spacer more help? ${WITHOUT_SPACE}`.slice(0, 100),
    trackId,
    riders: [{ riderId, bikeId }],
    arms: [arm('As it is', setups[1]), arm('One spacer more', setups[0])],
    runsAnArm: 3,
  });
  const session = { trackId, startsAt: '09:30', riderIds: [riderId], testPlanId: plan.id };
  await mechanic.post(`${team}/planned-sessions`, { ...session, day: NEVER_PAST });
  await mechanic.post(`${team}/tokens`, {
    name: `Timing script ${WITHOUT_SPACE}`.slice(0, 80),
    scopes: ['log-runs'],
  });
  const order = await mechanic.post<Item>(`${team}/work-orders`, { setupId: setups[1]?.id });
  return { teamId, bikeId, trackId, riderId, unitId, planId: plan.id, orderId: order.id };
}

/** A team without anything; its addresses lead to things that are not there. */
export async function emptyPlaces(
  address: string,
  places: Places,
): Promise<{ caller: Caller; places: Places }> {
  const caller = new Caller(address);
  const person = {
    email: 'nothing@tests.example',
    password: MECHANIC.password,
    displayName: 'Mechanic Nothing',
  };
  await caller.post('/accounts', person);
  const { id } = await caller.post<Item>('/teams', { name: 'Team without anything' });
  return { caller, places: { ...places, teamId: id } };
}
