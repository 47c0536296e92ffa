import { execFileSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { isRoot } from '../places.mjs';

/** @typedef {{ uid: number, gid: number }} Account */

/** In order of preference: the usual account of a database server, then the one every system has. */
const candidates = ['postgres', 'nobody'];

/**
 * The account that Postgres runs under when we are root, since it refuses to run as root: the owner of the
 * cluster when there is one already. Undefined means our own account.
 * @param {string} cluster
 * @returns {Account | undefined}
 */
export function databaseAccount(cluster) {
  if (!isRoot) return undefined;
  const existing = statSync(cluster, { throwIfNoEntry: false });
  if (existing && existing.uid !== 0) return { uid: existing.uid, gid: existing.gid };
  for (const name of candidates) {
    const uid = id('-u', name);
    const gid = id('-g', name);
    if (uid && gid) return { uid, gid };
  }
  throw new Error(
    `Postgres refuses to run as root, and this machine has no account named ${candidates.join(' or ')}. ` +
      'Start as a normal user, create one of them, or set DATABASE_URL.',
  );
}

/** @param {string} option @param {string} name */
function id(option, name) {
  try {
    return Number(
      execFileSync('id', [option, name], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }),
    );
  } catch {
    return undefined;
  }
}
