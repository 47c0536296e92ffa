import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createTestDatabase, type TestDatabase } from '../support/database.js';
import { POLICY, policyOf } from '../support/policy.js';
import { startTestService, type TestService } from '../support/service.js';

const DASHBOARD = fileURLToPath(new URL('../../apps/dashboard/dist', import.meta.url));
const ID = '01890a5d-ac96-774b-bcce-b302099a8057';
/** Pages that the router of the dashboard opens; for the service they are no files. */
const DEEP_LINKS = [
  '/sign-in',
  `/teams/${ID}/pit`,
  `/teams/${ID}/bikes/${ID}?tab=history`,
  '/join',
  '/nothing/here',
];

let database: TestDatabase;
let service: TestService;
beforeAll(async () => {
  database = await createTestDatabase();
  service = await startTestService(database);
});
afterAll(async () => {
  await service.stop();
  await database.drop();
});

/** Every built file, as an address; those that are packed are answered in the place of the plain ones. */
const files = readdirSync(DASHBOARD, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => join(entry.parentPath, entry.name).slice(DASHBOARD.length))
  .filter((path) => !/\.(br|gz)$/.test(path));
const ask = (path: string, headers: Record<string, string> = {}) =>
  fetch(`${service.address}${path}`, { headers, redirect: 'manual' });

function expectGuarded(path: string, answer: Response): void {
  const policy = policyOf(answer.headers.get('content-security-policy'));
  for (const [what, allowed] of Object.entries(POLICY))
    expect(policy.get(what), `${path}: ${what}`).toBe(allowed);
  expect([...policy.values()].join(' '), path).not.toMatch(/unsafe|\*|http:/);
  expect(answer.headers.get('x-content-type-options'), path).toBe('nosniff');
  expect(answer.headers.get('x-frame-options'), path).toBe('DENY');
  expect(answer.headers.get('referrer-policy'), path).toBe('no-referrer');
  expect(answer.headers.get('cross-origin-opener-policy'), path).toBe('same-origin');
  expect(answer.headers.get('permissions-policy'), path).toContain('geolocation=()');
}

describe('what the service serves to a browser', () => {
  it('is guarded, file by file, packed or not', async () => {
    expect(files.length).toBeGreaterThan(50);
    for (const must of ['/index.html', '/service-worker.js', '/app.webmanifest'])
      expect(files).toContain(must);
    for (const path of files) {
      for (const coding of ['identity', 'gzip', 'br']) {
        const answer = await ask(path, { 'accept-encoding': coding });
        expect(answer.status, path).toBe(200);
        expectGuarded(path, answer);
        await answer.body?.cancel();
      }
    }
  });

  it('is guarded where it has not changed, is not there, or is a page of the router', async () => {
    const entry = readFileSync(join(DASHBOARD, 'index.html'), 'utf8');
    for (const path of ['/', ...DEEP_LINKS]) {
      const answer = await ask(path);
      expect(answer.status, path).toBe(200);
      expect(answer.headers.get('content-type'), path).toMatch(/^text\/html/);
      expectGuarded(path, answer);
      expect(await answer.text()).toBe(entry);
    }
    const known = (await ask('/')).headers.get('etag') ?? '';
    // As a browser that reloads: `fetch` by itself would say that it takes nothing from a cache.
    const unchanged = await ask('/', { 'if-none-match': known, 'cache-control': 'max-age=0' });
    expect(unchanged.status).toBe(304);
    expectGuarded('/ unchanged', unchanged);
    for (const path of ['/assets/gone.js', '/../package.json', '/assets/..%2f..%2fpackage.json']) {
      const answer = await ask(path);
      expect(answer.status, path).toBeGreaterThanOrEqual(400);
      expect(answer.status, path).toBeLessThan(500);
      expectGuarded(path, answer);
    }
  });

  it('lets no worker reach beyond what it says, and has it asked for each time', async () => {
    const { headers } = await ask('/service-worker.js');
    expect(headers.get('content-type')).toMatch(/javascript/);
    expect(headers.get('service-worker-allowed')).toBeNull();
    expect(headers.get('cache-control')).toBe('no-cache');
  });
});

it('the entry page holds no script and no style of its own, and loads none from elsewhere', () => {
  const page = readFileSync(join(DASHBOARD, 'index.html'), 'utf8');
  const scripts = [...page.matchAll(/<script\b([^>]*)>([^]*?)<\/script>/gi)];
  expect(scripts.length).toBeGreaterThan(0);
  for (const [, attributes, content = ''] of scripts) {
    expect(attributes).toMatch(/\ssrc="\/assets\/[\w-]+\.js"/);
    expect(content.trim()).toBe('');
  }
  expect(page).not.toMatch(/<style\b|\sstyle=|\son\w+=|javascript:|<base\b|<iframe\b/i);
  for (const [, address = ''] of page.matchAll(/\s(?:src|href)="([^"]*)"/g))
    expect(address).toMatch(/^\/(?!\/)/);
});
