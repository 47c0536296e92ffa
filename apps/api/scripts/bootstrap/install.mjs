import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cacheDirectory, root } from '../places.mjs';
import { run } from '../process/run.mjs';
import { hashOf } from './stamp.mjs';

const stampFile = join(cacheDirectory, 'install.json');
const lockFile = join(root, 'package-lock.json');
/** npm's own record of what is in `node_modules`, written at the end of every install. */
const installedFile = join(root, 'node_modules', '.package-lock.json');

/** Runs `npm ci` when what is installed is not what the lock file says, for this Node on this machine. @param {AbortSignal} signal */
export async function install(signal) {
  const wanted = {
    machine: `${process.version} ${process.platform} ${process.arch}`,
    packages: hashOf(['package.json', 'package-lock.json']),
  };
  if (!isInstalled(wanted)) {
    console.log('Installing packages ...');
    // Building needs the development packages whatever NODE_ENV says; no package's own script is needed; what the
    // cache holds is not asked for again, as the lock file names the exact content.
    const options = [
      '--include=dev',
      '--ignore-scripts',
      '--prefer-offline',
      '--no-audit',
      '--no-fund',
      '--loglevel=error',
    ];
    await run('npm', ['ci', ...options], { signal });
  }
  mkdirSync(cacheDirectory, { recursive: true });
  writeFileSync(stampFile, JSON.stringify(wanted));
}

/** @param {{ machine: string, packages: string }} wanted */
function isInstalled(wanted) {
  if (!existsSync(installedFile)) return false;
  const last = existsSync(stampFile) ? JSON.parse(readFileSync(stampFile, 'utf8')) : undefined;
  if (last && last.machine !== wanted.machine) return false;
  // A developer who ran `npm install` after the lock file changed has done it already.
  return last?.packages === wanted.packages || statSync(installedFile).mtimeMs >= statSync(lockFile).mtimeMs;
}
