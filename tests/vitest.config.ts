import { defineConfig } from 'vitest/config';

/**
 * Five projects: `libraries` (pure, parallel), `architecture`, `api` (HTTP against a real Postgres), `browser`
 * (pages in Chromium) and `faults` (the house started, stopped and killed). All but the last two read the sources,
 * so that they never see a stale build; those two use what `npm start` would run.
 */
const source = { resolve: { conditions: ['source'] }, ssr: { resolve: { conditions: ['source'] } } };
const root = new URL('..', import.meta.url).pathname;
const draws = { setupFiles: ['tests/support/same-draws.ts'] };
// What comes a moment later, as the next line of a log or the answer on a page, may take longer on a busy machine.
const database = {
  globalSetup: ['tests/support/database-server.ts'],
  hookTimeout: 60_000,
  expect: { poll: { timeout: 10_000 } },
};

export default defineConfig({
  root,
  test: {
    projects: [
      {
        ...source,
        root,
        test: {
          name: 'libraries',
          include: [
            'libs/*/src/**/*.test.ts',
            'apps/dashboard/src/**/*.test.ts',
            'tests/reference/**/*.test.ts',
            'tests/consistency/**/*.test.ts',
            'tests/simulator/**/*.test.ts',
          ],
          ...draws,
          testTimeout: 60_000,
        },
      },
      { ...source, root, test: { name: 'architecture', include: ['tests/architecture/**/*.test.ts'] } },
      {
        ...source,
        root,
        test: {
          name: 'api',
          include: ['tests/api/**/*.test.ts', 'apps/api/src/**/*.test.ts'],
          ...database,
          ...draws,
          testTimeout: 30_000,
        },
      },
      {
        ...source,
        root,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          ...database,
          testTimeout: 60_000,
          fileParallelism: false,
          sequence: { groupOrder: 1 },
        },
      },
      // Each test starts a whole house and waits for real processes to end: alone, so that its limits mean something.
      {
        root,
        test: {
          name: 'faults',
          include: ['tests/faults/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
