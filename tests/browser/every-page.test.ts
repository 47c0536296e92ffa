import type { BrowserContext, Page, Route } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Caller } from './support/caller.js';
import { addressOf, emptyPlaces, placesIn, routePaths, type Places } from './support/every-page.js';
import {
  AXE,
  enlargeText,
  motion,
  overflow,
  overlaps,
  partedFigures,
  refusals,
  shifts,
  unfold,
  violations,
  WATCH_SHIFTS,
} from './support/judge.js';
import { openHouse, SIZES, type House, type Size } from './support/pages.js';
import { MECHANIC, RIDER, type Person } from './support/team.js';

const [LAPTOP, PHONE] = SIZES;
const STATE_LIMIT_MS = 600_000;
/** Pages that wait for an answer leave the processor to others. */
const TABS = 3;
const LOADING = 'Loading…';

let house: House;
let places: Places;
let empty: { caller: Caller; places: Places };
let paths: string[];

beforeAll(async () => {
  house = await openHouse();
  places = await placesIn(house.address);
  empty = await emptyPlaces(house.address, places);
  const page = await house.open('/sign-in', LAPTOP);
  await page.getByRole('button', { name: 'Sign in' }).waitFor();
  paths = await routePaths(page);
});
afterAll(() => house.close());

/** The state that pages are brought into, and where they are judged in it. */
interface State {
  readonly who: () => Promise<Caller | null>;
  readonly places: () => Places;
  readonly paths: () => string[];
  readonly sizes: readonly Size[];
  /** Answers what is read of the team in the place of the service. */
  readonly answer?: (route: Route) => Promise<void>;
  /** Whether who reads has chosen letters twice as large: asked then is what has room for them. */
  readonly largeText?: boolean;
  /** Whether the page goes on loading. */
  readonly loads?: boolean;
}

const signedIn = async (who: Person): Promise<Caller> => {
  const caller = new Caller(house.address);
  await caller.post('/sign-ins', who);
  return caller;
};
const ofTeam = () => paths.filter((path) => path.includes('$teamId'));
const ofRider = () => ofTeam().filter((path) => /my-bike|tracks|bikes|comparison|sign-ins/.test(path));
const TEAM_READS = /\/api\/v1\/teams\//;
const FAILED = { status: 500, contentType: 'application/problem+json', body: '{"title":"It failed"}' };
const mechanics = { who: () => signedIn(MECHANIC), places: () => places, paths: ofTeam };

// Where nothing is read the pages are the frame and one message: half of them at each size tell as much.
const STATES: Readonly<Record<string, State>> = {
  data: { ...mechanics, sizes: SIZES },
  'data, as the rider': {
    who: () => signedIn(RIDER),
    places: () => places,
    paths: ofRider,
    sizes: [PHONE],
  },
  'data, with text twice as large': { ...mechanics, sizes: SIZES, largeText: true },
  'data, with text twice as large, as the rider': {
    who: () => signedIn(RIDER),
    places: () => places,
    paths: ofRider,
    sizes: [PHONE],
    largeText: true,
  },
  nothing: { who: async () => empty.caller, places: () => empty.places, paths: ofTeam, sizes: SIZES },
  'nobody signed in': {
    who: async () => null,
    places: () => places,
    paths: () => paths.filter((path) => !path.includes('$teamId')),
    sizes: SIZES,
  },
  'the service fails': { ...mechanics, sizes: [PHONE], answer: (route) => route.fulfill(FAILED) },
  'no connection': { ...mechanics, sizes: [LAPTOP], answer: (route) => route.abort() },
  loading: { ...mechanics, sizes: [PHONE], answer: async () => undefined, loads: true },
};

/** Waits until the page shows what it will show. */
async function settle(page: Page, loads: boolean): Promise<void> {
  await page
    .locator('h1, h2')
    .first()
    .or(page.getByText(LOADING).first())
    .first()
    .waitFor({ state: 'attached' });
  if (!loads) await page.getByText(LOADING).first().waitFor({ state: 'detached' });
  // What is loaded lazily inside comes a moment later.
  await page.waitForTimeout(400);
}

async function judge(context: BrowserContext, size: Size, state: State, path: string): Promise<string[]> {
  const page = await context.newPage();
  const found: string[] = [];
  const note = (when: string, problems: readonly string[]) =>
    found.push(...problems.map((problem) => `${path} (${size.name}${when}): ${problem}`));
  const refused = refusals(page);
  try {
    if (state.answer) await page.route(TEAM_READS, state.answer);
    if (state.largeText) await enlargeText(page);
    await page.goto(`${house.address}${addressOf(path, state.places())}`);
    await settle(page, state.loads ?? false);
    if (state.largeText) {
      await unfold(page);
      await page.waitForTimeout(200);
      note('', await overflow(page));
      note('', await overlaps(page));
      note('', await partedFigures(page));
      return found;
    }
    note('', await shifts(page));
    note('', await overflow(page));
    note('', await violations(page, state.answer ? 'without heading' : 'all'));
    await page.emulateMedia({ colorScheme: 'dark' });
    await page.locator('[data-mantine-color-scheme="dark"]').waitFor({ state: 'attached' });
    note(', dark', await violations(page, 'contrast'));
    await page.evaluate(`document.documentElement.dir = 'rtl'`);
    note(', right to left', await overflow(page));
    if (size === PHONE) note('', await motion(page));
    note('', refused);
  } catch (error) {
    note(', not judged', [String(error).slice(0, 300)]);
  } finally {
    await page.close();
  }
  return found;
}

describe('every page of the router', () => {
  it('is known: the dashboard tells its pages', () => {
    expect(paths.length).toBeGreaterThan(30);
    expect(paths).toContain('/teams/$teamId/pit');
  });

  it.each(Object.entries(STATES))(
    'breaks no rule of accessibility, moves nothing by itself and fits the phone both ways round: %s',
    async (_, state) => {
      const caller = await state.who();
      const found: string[] = [];
      for (const size of state.sizes) {
        // The phone's owner has asked for less motion.
        const context = await house.context(size, size === PHONE);
        if (caller) await context.addCookies([caller.signInCookie]);
        await context.addInitScript(AXE);
        await context.addInitScript(WATCH_SHIFTS);
        const waiting = [...state.paths()];
        const tab = async () => {
          for (let path = waiting.shift(); path !== undefined; path = waiting.shift())
            found.push(...(await judge(context, size, state, path)));
        };
        await Promise.all(Array.from({ length: TABS }, tab));
        await context.close();
      }
      expect(found).toEqual([]);
    },
    STATE_LIMIT_MS,
  );
});
