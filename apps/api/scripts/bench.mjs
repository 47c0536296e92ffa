/** `npm run bench -- <name>`: builds, then runs `tests/bench/<name>.bench.ts` against what was built. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { prepare } from './bootstrap/prepare.mjs';
import { cacheDirectory, root } from './places.mjs';
import { CommandFailed, run } from './process/run.mjs';
import { stopSignal } from './process/stop-signal.mjs';

const signal = stopSignal();
const [name = '', ...options] = process.argv.slice(2);
try {
  if (!existsSync(join(root, 'tests/bench', `${name}.bench.ts`))) {
    throw new Error(`There is no benchmark '${name}': name one, as in \`npm run bench -- engine\`.`);
  }
  await prepare(signal);
  const tsc = join('node_modules', 'typescript', 'bin', 'tsc');
  await run(process.execPath, [tsc, '-b', 'tests/bench'], { signal });
  await run(process.execPath, [join(cacheDirectory, 'bench', `${name}.bench.js`), ...options], { signal });
} catch (error) {
  // A benchmark that failed has said why itself.
  if (!(error instanceof CommandFailed)) console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
