import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { offlineShell } from './build-shell.js';
import { earlyScript } from './early-script.js';
import { themeStyleSheet } from './theme-css.js';

/** Where `npm start` serves the API; the development server hands its calls on. */
const API_ADDRESS = 'http://127.0.0.1:4750';

/** What the first script reads with; it must not wait for the packages of the pages. */
const FIRST_READS = new RegExp(
  `src/(${[
    'shared/http/(call|client|problem|keys|all-pages|reads/(bikes|decisions|runs|setups|tracks))',
    'shared/format/by-name',
    'features/account/api/account',
    'app/(choose-bike|home|start/early-reads)',
  ].join('|')})\\.ts|react-query/build/modern/(infiniteQ|q)ueryOptions\\.js`,
);

/** Packed as one they are smaller, and stay in the phone's cache when only our own code changes. */
const EVERY_PAGES_PACKAGES = /node_modules\/(react|react-dom|scheduler|@tanstack|use-sync-external-store)\//;

/** Of the engine, what corrects a pressure for other air: a phone loads no more of it. */
const WHAT_CORRECTS_FOR_AIR = 'libs/(units/src/|spring/src/(gas/atmosphere|numerics/input-error))';

/** What the rider's first page is made of and shares with others: one file instead of a dozen of some hundred bytes. */
const RIDERS_SHARE = new RegExp(
  `src/(${[
    'shared/http/(reads/(baselines|planned-sessions)|joined)',
    'shared/format/(air-temperature|time|numbers|units|sentences|setup-changes|stroke-marks)',
    'shared/ui/(below|page|note|link|plain-button|choice-row|end-figures|as-of|stroke-bar|use-width)',
    'features/workbench/api/bike-ends',
    'features/test-plans/api/(plans|rider-plans)',
    'features/ride/(my-bike-texts|components/(ride\\.module|use-now|use-typed-temperature|run-under-way)|model/(run-timer|typed-temperature|todays|next-session|what-is-next))',
    'features/runs/(texts|components/(runs\\.module|run-note)|model/reading-text)',
    'app/pages/(waiting-runs|my-bike-(page|now|next|place))',
  ].join('|')})|${WHAT_CORRECTS_FOR_AIR}`,
);

const THERE_FROM_THE_START = /\/(index|rider)-[^/]*$/;

/** What a rider opens on a phone: its parts are fetched at once. */
const ON_THE_PHONE = /\/(my-bike-choosers|log-run|queued-runs|pump-to|kit|account-choices|plan-page)/;

/**
 * The entry page names all its parts, so that they come at once. Of the parts of a page that is opened later, the script
 * that loads first names only the style sheets that are not there yet: the list of all would be a tenth of what a phone
 * loads. Pages of the desk find their parts one round trip later.
 */
const partsNamedFirst = (
  page: string,
  parts: string[],
  { hostType }: { hostType: 'html' | 'js' },
): string[] =>
  hostType === 'html' || ON_THE_PHONE.test(`/${page}`)
    ? parts
    : parts.filter((part) => part.endsWith('.css') && !THERE_FROM_THE_START.test(part));

export default defineConfig({
  plugins: [react(), themeStyleSheet(), earlyScript(), offlineShell()],
  base: '/',
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  build: {
    outDir: 'dist',
    target: 'es2023',
    sourcemap: false,
    // Every browser that knows the target's language knows how to load a part beforehand.
    modulePreload: { polyfill: false, resolveDependencies: partsNamedFirst },
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: 'first-reads', test: FIRST_READS },
            { name: 'base', test: EVERY_PAGES_PACKAGES },
            { name: 'rider', test: RIDERS_SHARE },
          ],
        },
      },
    },
  },
  server: { proxy: { '/api': API_ADDRESS } },
});
