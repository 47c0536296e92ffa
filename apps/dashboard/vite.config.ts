import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { offlineShell } from './build-shell.js';
import { themeStyleSheet } from './theme-css.js';

/** Where `npm start` serves the API; the development server hands its calls on. */
const API_ADDRESS = 'http://127.0.0.1:4750';

/** Packed as one they are smaller, and stay in the phone's cache when only our own code changes. */
const EVERY_PAGES_PACKAGES = /node_modules\/(react|react-dom|scheduler|@tanstack|use-sync-external-store)\//;

/** What corrects a pressure for other air; without it the phone would load the whole engine of the workbench. */
const AIR = /libs\/(units\/src\/|spring\/src\/(gas\/atmosphere|numerics\/input-error))/;

/** What the rider's first page is made of and shares with others: one file instead of a dozen of some hundred bytes. */
const RIDERS_SHARE = new RegExp(
  `src/(${[
    'shared/http/(reads/(bikes|runs|setups|tracks|decisions|baselines|planned-sessions)|all-pages|joined)',
    'shared/format/(air-temperature|time|numbers|units|sentences|by-name|setup-changes|stroke-marks)',
    'shared/ui/(below|page|note|link|plain-button|choice-row|end-figures|as-of|stroke-bar|use-width)',
    'features/workbench/api/bike-ends',
    'features/test-plans/api/(plans|rider-plans)',
    'features/ride/(my-bike-texts|components/(ride\\.module|use-now|use-typed-temperature|run-under-way)|model/(run-timer|typed-temperature|todays|next-session|what-is-next))',
    'features/runs/(texts|components/(runs\\.module|run-note)|model/reading-text)',
    'app/pages/(waiting-runs|my-bike-(page|now|next|place))',
    'app/choose-bike',
  ].join('|')})`,
);

/** What a rider opens on a phone: its parts are fetched at once. */
const ON_THE_PHONE = /\/(my-bike-choosers|log-run|queued-runs|pump-to|kit|account-choices|plan-page)/;

/**
 * The entry page names all its parts, so that they come at once. Of the parts of a page that is opened later, the script
 * that loads first names only the style sheets: the list of all would be a tenth of what a phone loads. Pages of the desk
 * find their parts one round trip later.
 */
const partsNamedFirst = (
  page: string,
  parts: string[],
  { hostType }: { hostType: 'html' | 'js' },
): string[] =>
  hostType === 'html' || ON_THE_PHONE.test(`/${page}`)
    ? parts
    : parts.filter((part) => part.endsWith('.css'));

export default defineConfig({
  plugins: [react(), themeStyleSheet(), offlineShell()],
  base: '/',
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  build: {
    outDir: 'dist',
    target: 'es2023',
    sourcemap: false,
    modulePreload: { resolveDependencies: partsNamedFirst },
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: 'base', test: EVERY_PAGES_PACKAGES },
            { name: 'air', test: AIR },
            { name: 'rider', test: RIDERS_SHARE },
          ],
        },
      },
    },
  },
  server: { proxy: { '/api': API_ADDRESS } },
});
