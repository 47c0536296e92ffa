/**
 * `npm run simulate`: builds, rides the simulated teams, and writes the figures into `docs/simulator.md`; with `-- set-ups`
 * or `-- verdicts` those of one study.
 */
import { join } from 'node:path';
import { prepare } from './bootstrap/prepare.mjs';
import { cacheDirectory } from './places.mjs';
import { run } from './process/run.mjs';
import { stopSignal } from './process/stop-signal.mjs';

const signal = stopSignal();
try {
  await prepare(signal);
  const tsc = join('node_modules', 'typescript', 'bin', 'tsc');
  await run(process.execPath, [tsc, '-b', 'tests/simulator'], { signal });
  await run(process.execPath, [join(cacheDirectory, 'simulator', 'simulate.js'), ...process.argv.slice(2)], {
    signal,
  });
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
