import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { cacheDirectory, root } from '../places.mjs';
import { withLock } from '../process/lock.mjs';
import { build } from './build.mjs';
import { install } from './install.mjs';

/**
 * Makes the clone ready to run: installs and builds what is missing or out of date, nothing else.
 * Uses only Node itself, since it runs before anything is installed.
 * @param {AbortSignal} signal
 */
export async function prepare(signal) {
  checkNode();
  const work = async () => {
    await install(signal);
    await build(signal);
  };
  await withLock(join(cacheDirectory, 'prepare.lock'), work, signal);
}

function checkNode() {
  const { engines } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const [wantedMajor, wantedMinor] = numbers(engines.node);
  const [major, minor] = numbers(process.versions.node);
  if (major < wantedMajor || (major === wantedMajor && minor < wantedMinor)) {
    throw new Error(`Loamledger needs Node ${engines.node}; this is Node ${process.versions.node}.`);
  }
}

/** @param {string} version @returns {[major: number, minor: number]} */
function numbers(version) {
  const [major, minor] = (/(\d+)\.(\d+)/.exec(version) ?? []).slice(1).map(Number);
  return [major ?? 0, minor ?? 0];
}
