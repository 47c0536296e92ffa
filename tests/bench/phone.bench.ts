/** Measures the rider's first page in Chromium at a phone's size: script, and when the largest thing is painted. */
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { BrowserContext, Page } from 'playwright-core';
import { openHouse } from './api/house.js';
import { launchBrowser } from './browser.js';

const MS = 1_000;
const BITS = 8;
/** Chromium's own slow 4G has 1.6 Mbit/s, of which nine tenths reach a page, and 150 ms there and back. */
const SLOW_4G = { downloadThroughput: (1.6e6 / BITS) * 0.9, uploadThroughput: (0.75e6 / BITS) * 0.9 };
/** The round trip, and what the browser's panel sets so that each request costs as many of them as it takes. */
const LATENCIES_MS = { '150 ms a request': 150, '562.5 ms a request, as the panel has it': 562.5 };
const CPU_SLOWDOWN = 4;
/** By then nothing larger comes, ms. */
const SETTLED_MS = 4_000;
const REPEATS = 3;

process.env['DASHBOARD_DIR'] = join(process.cwd(), 'apps/dashboard/dist');
const house = await openHouse();
const browser = await launchBrowser();
try {
  console.log(`script of the first load: ${await scriptBytes()} B with gzip`);
  for (const [name, latency] of Object.entries(LATENCIES_MS)) {
    const paints = await repeated(() => firstVisit(latency));
    console.log(`slow 4G, ${name}, ${CPU_SLOWDOWN}x CPU: largest paint ${paints} ms, nothing kept`);
  }
  for (const slowdown of [1, CPU_SLOWDOWN]) {
    const paints = await repeated(() => offlineVisit(slowdown));
    console.log(`no network, ${slowdown}x CPU: largest paint ${paints} ms, kept on the phone`);
  }
} finally {
  await browser.close();
  await house.stop();
}

async function repeated(measure: () => Promise<number>): Promise<string> {
  const times: number[] = [];
  for (let turn = 0; turn < REPEATS; turn += 1) times.push(await measure());
  return times.map((time) => time.toFixed(0)).join(', ');
}

function address(): string {
  return `${house.address}/teams/${house.demo.teamId}/my-bike?bikeId=${house.demo.bikeId}`;
}

async function phone(
  serviceWorkers: 'allow' | 'block' = 'allow',
): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers });
  const [name = '', value = ''] = house.demo.cookie.split('=');
  await context.addCookies([{ name, value, url: house.address }]);
  return { context, page: await context.newPage() };
}

async function scriptBytes(): Promise<number> {
  const { context, page } = await phone();
  const bodies: Promise<Buffer>[] = [];
  page.on('response', (response) => {
    if (response.request().resourceType() === 'script') bodies.push(response.body());
  });
  await page.goto(address());
  await page.getByRole('link', { name: 'Log a run' }).waitFor();
  await page.waitForTimeout(SETTLED_MS);
  const sizes = (await Promise.all(bodies)).map((body) => gzipSync(body, { level: 9 }).length);
  await context.close();
  return sizes.reduce((sum, size) => sum + size, 0);
}

/** When the largest thing was painted, ms after the address was opened. */
async function largestPaint(page: Page): Promise<number> {
  await page.waitForTimeout(SETTLED_MS);
  return (await page.evaluate(`new Promise((resolve) => {
    new PerformanceObserver((list) => resolve(list.getEntries().at(-1).startTime))
      .observe({ type: 'largest-contentful-paint', buffered: true });
  })`)) as number;
}

async function firstVisit(latency: number): Promise<number> {
  // A worker's own line is not slowed down: without one, everything comes over the slow one.
  const { context, page } = await phone('block');
  const session = await context.newCDPSession(page);
  await session.send('Network.emulateNetworkConditions', { offline: false, latency, ...SLOW_4G });
  await session.send('Emulation.setCPUThrottlingRate', { rate: CPU_SLOWDOWN });
  await page.goto(address());
  const paint = await largestPaint(page);
  await context.close();
  return paint;
}

async function offlineVisit(slowdown: number): Promise<number> {
  const { context, page } = await phone();
  await page.goto(address());
  await page.evaluate('navigator.serviceWorker.ready');
  await page.waitForTimeout(SETTLED_MS);
  await context.setOffline(true);
  const next = await context.newPage();
  await page.close();
  const session = await context.newCDPSession(next);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  await next.goto(address(), { timeout: 20 * MS });
  const paint = await largestPaint(next);
  await context.close();
  return paint;
}
