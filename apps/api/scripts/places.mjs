import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../../', import.meta.url));
export const cacheDirectory = join(root, '.cache');

/** Root's Postgres runs under another account, which may not be able to enter the clone (a home of mode 0700). */
export const rootHome = '/var/lib/loamledger';
export const isRoot = process.getuid?.() === 0;

/** Names the cluster in its home; a cluster of another major version is never opened by mistake. */
export const clusterName = 'postgres-15';

/**
 * The folder that holds this clone's data: LOAMLEDGER_DATA_DIR; else `.data` in the clone; else, for root, a
 * folder under /var/lib/loamledger named by an id that stays with the clone when it is moved.
 */
export function dataHome() {
  if (process.env.LOAMLEDGER_DATA_DIR) return process.env.LOAMLEDGER_DATA_DIR;
  const inClone = join(root, '.data');
  if (!isRoot || existsSync(join(inClone, clusterName))) return inClone;
  return join(rootHome, instanceId(inClone));
}

/** @param {string} folder */
function instanceId(folder) {
  const file = join(folder, 'instance');
  if (!existsSync(file)) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(file, `${randomBytes(8).toString('hex')}\n`);
  }
  return readFileSync(file, 'utf8').trim();
}
