/** Takes the pictures of docs/guide-*.md from the demo team, in a house of its own. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { openHouse, type House } from '../api/house.js';
import { launchBrowser } from '../browser.js';
import { SHOTS, type Shot } from './shots.js';

const SIZES = { screen: { width: 1_280, height: 860 }, phone: { width: 390, height: 844 } };
const FOLDER = 'docs/pictures';
const MOST_BYTES = 150_000;
const QUALITY = 0.82;
/** What is loaded after the page stands: figures that are computed, the other half of a form. */
const SETTLED_MS = 2_500;
const LIMIT_MS = 60_000;

process.env['DASHBOARD_DIR'] = join(process.cwd(), 'apps/dashboard/dist');
const house = await openHouse();
const browser = await launchBrowser();
try {
  const riderLink = await linkOfRider(house);
  const pages = {
    mechanic: await mechanicsPage(browser, house),
    rider: await ridersPage(browser, `${house.address}${riderLink}`),
  };
  for (const shot of SHOTS) await take(pages[shot.who], shot, house);
} finally {
  await browser.close();
  await house.stop();
}

async function mechanicsPage(of: Browser, { demo, address }: House): Promise<Page> {
  const context = await of.newContext({ viewport: SIZES.screen });
  const [name = '', value = ''] = demo.cookie.split('=');
  await context.addCookies([{ name, value, url: address }]);
  return context.newPage();
}

async function ridersPage(of: Browser, link: string): Promise<Page> {
  const page = await (await of.newContext({ viewport: SIZES.phone })).newPage();
  await page.goto(link);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL(/my-bike/);
  return page;
}

/** The way in of the rider of the demo's bike. */
async function linkOfRider({ address, demo }: House): Promise<string> {
  const call = async (path: string, message?: object): Promise<unknown> => {
    const answer = await fetch(`${address}${demo.teamPath}${path}`, {
      headers: { cookie: demo.cookie, 'content-type': 'application/json' },
      ...(message && { method: 'POST', body: JSON.stringify(message) }),
    });
    if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
    return answer.json();
  };
  const { riderId } = (await call(`/bikes/${demo.bikeId}`)) as { riderId: string };
  const members = (await call('/members')) as { id: string; riderId: string | null }[];
  const member = members.find((candidate) => candidate.riderId === riderId);
  const { path } = (await call(`/members/${member?.id}/sign-in-links`, { endsOthers: false })) as {
    path: string;
  };
  return path;
}

async function take(page: Page, shot: Shot, { address, demo }: House): Promise<void> {
  const path = shot.path.replaceAll('{track}', demo.trackId).replaceAll('{bike}', demo.bikeId);
  await page.goto(`${address}/teams/${demo.teamId}/${path}`);
  await page.locator(shot.waitFor).first().waitFor({ timeout: LIMIT_MS });
  await page.waitForTimeout(SETTLED_MS);
  const box = shot.from === undefined ? null : await page.locator(shot.from).first().boundingBox();
  const clip = { ...SIZES[shot.size], x: 0, y: Math.max(0, (box?.y ?? 0) - 8) };
  const png = await page.screenshot({ fullPage: true, clip });
  const webp = await asWebp(page, png);
  if (webp.length > MOST_BYTES)
    throw new Error(`${shot.name} has ${webp.length} B, more than ${MOST_BYTES}.`);
  await writeFile(join(FOLDER, `${shot.name}.webp`), webp);
  console.log(`${FOLDER}/${shot.name}.webp  ${Math.round(webp.length / 1_000)} kB`);
}

/** The browser itself writes the smaller format; on a page without the rules of ours, which take no pictures from data. */
async function asWebp(page: Page, png: Buffer): Promise<Buffer> {
  const blank = await page.context().newPage();
  const address = await blank.evaluate(`(async () => {
    const picture = new Image();
    picture.src = 'data:image/png;base64,${png.toString('base64')}';
    await picture.decode();
    const canvas = Object.assign(document.createElement('canvas'), { width: picture.width, height: picture.height });
    canvas.getContext('2d').drawImage(picture, 0, 0);
    return canvas.toDataURL('image/webp', ${QUALITY});
  })()`);
  await blank.close();
  return Buffer.from(String(address).replace(/^.*,/, ''), 'base64');
}
