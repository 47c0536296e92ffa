import type { Browser, BrowserContext, Page } from 'playwright-core';
import { launchBrowser } from '../../support/browser.js';
import { createTestDatabase } from '../../support/database.js';
import { startTestService } from '../../support/service.js';
import { Caller } from './caller.js';
import { keepPictures } from './pictures.js';
import { createTeam, type Person } from './team.js';

/** The two sizes at which every page must do its job. */
export const SIZES = [
  { name: 'laptop', width: 1440, height: 900 },
  { name: 'phone', width: 390, height: 844 },
] as const;
export type Size = (typeof SIZES)[number];

/** A page that hangs must fail its test, not the run. */
const ACTION_LIMIT_MS = 20_000;

export interface House {
  /** A fresh browser window of a person who is signed in, on their first page. */
  readonly enter: (who: Person, size: Size) => Promise<Page>;
  /** The same, with everything going over a line to the service. */
  readonly enterOver: (address: string, who: Person, size: Size) => Promise<Page>;
  /** Where the service is. */
  readonly address: string;
  /** A fresh browser window of a stranger on an address of the service. */
  readonly open: (path: string, size: Size) => Promise<Page>;
  /** A fresh browser of a stranger without pages, into whose requests a test may step: no worker answers them. */
  readonly context: (size: Size, lessMotion: boolean) => Promise<BrowserContext>;
  readonly close: () => Promise<void>;
}

/** The built service with the built dashboard, a small team in it, and a browser. */
export async function openHouse(): Promise<House> {
  const database = await createTestDatabase();
  const service = await startTestService(database);
  const browser = await launchBrowser();
  const pictures = keepPictures();
  await createTeam(service.address);
  const enterOver = async (address: string, who: Person, size: Size) => {
    const caller = new Caller(service.address);
    await caller.post('/sign-ins', who);
    const context = await newContext(browser, size);
    await context.addCookies([caller.signInCookie]);
    const page = await newPage(context);
    pictures.of(page, size.name);
    await page.goto(address);
    return page;
  };
  return {
    address: service.address,
    enterOver,
    open: async (path, size) => {
      const page = await newPage(await newContext(browser, size));
      pictures.of(page, size.name);
      await page.goto(`${service.address}${path}`);
      return page;
    },
    context: ({ width, height }, lessMotion) =>
      browser.newContext({
        viewport: { width, height },
        serviceWorkers: 'block',
        reducedMotion: lessMotion ? 'reduce' : 'no-preference',
      }),
    enter: (who, size) => enterOver(service.address, who, size),
    close: async () => {
      await pictures.take();
      await browser.close();
      await service.stop();
      await database.drop();
    },
  };
}

const newContext = (browser: Browser, { width, height }: Size) =>
  browser.newContext({ viewport: { width, height } });

async function newPage(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(ACTION_LIMIT_MS);
  return page;
}

/** How far the page reaches beyond its window to the right, px; 0 where nothing has to be scrolled sideways. */
export const sidewaysOverflow = (page: Page) =>
  page.evaluate('document.documentElement.scrollWidth - window.innerWidth') as Promise<number>;
