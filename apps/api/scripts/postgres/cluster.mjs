import { randomBytes } from 'node:crypto';
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { clusterName } from '../places.mjs';
import { run } from '../process/run.mjs';
import { databaseAccount } from './account.mjs';

/**
 * @typedef {object} Cluster
 * @property {string} data       the folder that Postgres calls its data directory
 * @property {string} log        the server's log
 * @property {string} portFile   remembers the port between starts
 * @property {string} password   of the role `loamledger`
 * @property {import('./account.mjs').Account | undefined} account  whose the data is, when not ours
 */

/** The role and the database that the service owns. The role is no superuser: a hosted Postgres gives none. */
export const ownerRole = 'loamledger';
export const databaseName = 'loamledger';

/**
 * The cluster in `home`, made when there is none yet: complete or not at all, since it gets its name last.
 * @param {string} home
 * @param {string} binaries
 * @param {{ throwaway: boolean }} options  a throw-away cluster does not wait for the disk
 * @returns {Promise<Cluster>}
 */
export async function openCluster(home, binaries, { throwaway }) {
  const data = join(home, clusterName);
  mkdirSync(home, { recursive: true });
  const account = databaseAccount(data);
  // The database's account passes through this folder; what others may not read has its own mode.
  if (account) chmodSync(home, 0o711);
  const cluster = {
    data,
    log: join(home, 'postgres.log'),
    portFile: join(home, 'postgres.port'),
    password: ownerPassword(home),
    account,
  };
  if (!existsSync(data)) await create(cluster, binaries, throwaway);
  return cluster;
}

/** @param {string} home */
function ownerPassword(home) {
  const file = join(home, 'postgres.password');
  if (!existsSync(file)) writeFileSync(file, `${randomBytes(24).toString('hex')}\n`, { mode: 0o600 });
  return readFileSync(file, 'utf8').trim();
}

/** @param {Cluster} cluster @param {string} binaries @param {boolean} throwaway */
async function create({ data, password, account }, binaries, throwaway) {
  const draft = `${data}.draft`;
  rmSync(draft, { recursive: true, force: true });
  mkdirSync(draft, { mode: 0o700 });
  if (account) chownSync(draft, account.uid, account.gid);
  const asOwner = { ...account, cwd: '/', capture: true };
  await run(
    join(binaries, 'initdb'),
    // Bytewise order and UTF-8 everywhere, whatever the machine's language, so that lists sort alike on every server.
    [
      ...[
        '--pgdata',
        draft,
        '--username',
        'postgres',
        '--encoding',
        'UTF8',
        '--locale',
        'C',
        '--auth',
        'reject',
      ],
      ...(throwaway ? ['--no-sync'] : []),
    ],
    asOwner,
  );
  // The superuser has no password, so only the owner's role can sign in, and only from this machine.
  writeFileSync(join(draft, 'pg_hba.conf'), 'host all all 127.0.0.1/32 scram-sha-256\n');
  await run(join(binaries, 'postgres'), ['--single', '-D', draft, 'postgres'], {
    ...asOwner,
    input: [
      `CREATE ROLE ${ownerRole} LOGIN CREATEDB CREATEROLE PASSWORD '${password}'`,
      `CREATE DATABASE ${databaseName} OWNER ${ownerRole}`,
      '',
    ].join('\n'),
  });
  renameSync(draft, data);
}
