import { join } from 'node:path';
import { run } from '../process/run.mjs';
import { onceFor } from './stamp.mjs';

const shared = ['package.json', 'package-lock.json', 'tsconfig.json', 'libs'];
const api = {
  sources: [...shared, 'apps/api/src', 'apps/api/package.json', 'apps/api/tsconfig.json'],
  result: 'apps/api/dist/main.js',
};
const dashboard = {
  sources: [...shared, 'apps/dashboard', 'apps/api/openapi.json'],
  result: 'apps/dashboard/dist/index.html',
};

/** Builds libraries, service and dashboard, each only when its sources changed. @param {AbortSignal} signal */
export async function build(signal) {
  await onceFor('build-api', api, () => {
    console.log('Building the service ...');
    return run(process.execPath, [join('node_modules', 'typescript', 'bin', 'tsc'), '-b', 'apps/api'], {
      signal,
    });
  });
  await onceFor('build-dashboard', dashboard, () => {
    console.log('Building the dashboard ...');
    return run('npm', ['run', '--silent', 'build', '-w', 'apps/dashboard'], { signal });
  });
}
