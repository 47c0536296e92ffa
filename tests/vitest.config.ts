import { defineConfig } from 'vitest/config';

/**
 * Four projects: `libraries` (pure, parallel), `architecture`, `api` (HTTP against a real Postgres) and
 * `browser` (pages in Chromium). Libraries are read from source, so a test never sees a stale build.
 */
const source = { resolve: { conditions: ['source'] }, ssr: { resolve: { conditions: ['source'] } } };
const root = new URL('..', import.meta.url).pathname;

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
            'tests/reference/**/*.test.ts',
            'tests/consistency/**/*.test.ts',
          ],
          testTimeout: 60_000,
        },
      },
      { ...source, root, test: { name: 'architecture', include: ['tests/architecture/**/*.test.ts'] } },
    ],
  },
});
