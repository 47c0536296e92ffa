/** `npm run pictures`: builds, starts the demo by itself, and takes the pictures of the guides anew. */
import { join } from 'node:path';
import { prepare } from './bootstrap/prepare.mjs';
import { cacheDirectory } from './places.mjs';
import { CommandFailed, run } from './process/run.mjs';
import { stopSignal } from './process/stop-signal.mjs';

const signal = stopSignal();
try {
  await prepare(signal);
  const tsc = join('node_modules', 'typescript', 'bin', 'tsc');
  await run(process.execPath, [tsc, '-b', 'tests/bench'], { signal });
  await run(process.execPath, [join(cacheDirectory, 'bench', 'pictures', 'take-pictures.js')], { signal });
} catch (error) {
  if (!(error instanceof CommandFailed)) console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
