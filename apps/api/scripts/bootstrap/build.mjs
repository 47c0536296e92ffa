import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { root } from '../places.mjs';
import { run } from '../process/run.mjs';
import { onceFor } from './stamp.mjs';

const shared = ['package-lock.json', 'tsconfig.json', 'libs'];
const service = {
  sources: [
    ...shared,
    'apps/api/src',
    'apps/api/package.json',
    'apps/api/tsconfig.json',
    'apps/api/scripts/bootstrap/bundle.mjs',
  ],
  result: 'apps/api/dist/bundle/main.js',
};
const bundler = fileURLToPath(new URL('bundle.mjs', import.meta.url));
const dashboard = { sources: [...shared, 'apps/dashboard'], result: 'apps/dashboard/dist/index.html' };

/**
 * Builds service and dashboard at the same time, each only when its sources changed. Types are not checked: that
 * takes longer than the build and is what `npm run check` is for.
 * @param {AbortSignal} signal
 */
export async function build(signal) {
  await Promise.all([
    onceFor('build-service', service, async () => {
      console.log('Building the service ...');
      const tsc = join(root, 'node_modules/typescript/bin/tsc');
      await run(process.execPath, [tsc, '-b', 'apps/api', '--noCheck'], { signal });
      await run(process.execPath, [bundler], { signal });
    }),
    onceFor('build-dashboard', dashboard, () => {
      console.log('Building the dashboard ...');
      const vite = join(root, 'node_modules/vite/bin/vite.js');
      const cwd = join(root, 'apps/dashboard');
      return run(process.execPath, [vite, 'build', '--logLevel', 'warn'], { signal, cwd });
    }),
  ]);
}
