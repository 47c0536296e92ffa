import type { Browser, Page } from 'playwright-core';
import { launchBrowser } from '../../support/browser.js';
import { createTestDatabase } from '../../support/database.js';
import { startTestService } from '../../support/service.js';
import { createTeam, type Person } from './team.js';

/** The two sizes at which every page must do its job. */
export const SIZES = [
  { name: 'laptop', width: 1440, height: 900 },
  { name: 'phone', width: 390, height: 844 },
] as const;
export type Size = (typeof SIZES)[number];

/** A page that hangs must fail its test, not the run. */
const ACTION_LIMIT_MS = 10_000;

export interface House {
  /** A fresh browser window, signed in, on the first page of this person. */
  readonly signIn: (who: Person, size: Size) => Promise<Page>;
  /** A fresh browser window on an address of the service. */
  readonly open: (path: string, size: Size) => Promise<Page>;
  readonly close: () => Promise<void>;
}

/** The built service with the built dashboard, a small team in it, and a browser. */
export async function openHouse(): Promise<House> {
  const database = await createTestDatabase();
  const service = await startTestService(database);
  const browser = await launchBrowser();
  await createTeam(service.address);
  const open = (path: string, size: Size) => openPage(browser, `${service.address}${path}`, size);
  return {
    open,
    signIn: async (who, size) => {
      const page = await open('/', size);
      await page.getByLabel('E-mail address').fill(who.email);
      await page.getByRole('textbox', { name: 'Password' }).fill(who.password);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.getByRole('navigation', { name: 'Pages' }).waitFor();
      return page;
    },
    close: async () => {
      await browser.close();
      await service.stop();
      await database.drop();
    },
  };
}

async function openPage(browser: Browser, address: string, size: Size): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: size.width, height: size.height } });
  const page = await context.newPage();
  page.setDefaultTimeout(ACTION_LIMIT_MS);
  await page.goto(address);
  return page;
}

/** How far the page reaches beyond its window to the right, px; 0 where nothing has to be scrolled sideways. */
export const sidewaysOverflow = (page: Page) =>
  page.evaluate('document.documentElement.scrollWidth - window.innerWidth') as Promise<number>;
