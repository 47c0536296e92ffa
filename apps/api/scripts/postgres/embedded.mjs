import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isRunning } from '../process/table.mjs';
import { postgresBinaries } from './binaries.mjs';
import { openCluster } from './cluster.mjs';
import { startServer } from './server.mjs';

/** Unsafe and fast: right for data that nobody wants back. */
const forgetful = { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off' };
const throwawayPrefix = 'loamledger-throwaway-';

/**
 * The clone's own Postgres: durable, with its data under `home`.
 * @param {string} home
 * @param {number} [port]  where one that ended had served those who still know its address; refused while it is taken
 */
export async function startEmbedded(home, port) {
  const binaries = postgresBinaries();
  return startServer(await openCluster(home, binaries, { throwaway: false }), binaries, { port });
}

/** A fresh Postgres for tests and benchmarks; `stop` leaves nothing behind. */
export async function startThrowaway() {
  removeAbandoned();
  const home = mkdtempSync(join(tmpdir(), `${throwawayPrefix}${process.pid}-`));
  const binaries = postgresBinaries();
  const server = await startServer(await openCluster(home, binaries, { throwaway: true }), binaries, {
    settings: forgetful,
  });
  return {
    url: server.url,
    stop: async () => {
      await server.stop();
      rmSync(home, { recursive: true, force: true });
    },
  };
}

/** Removes what runs that were killed could not. */
function removeAbandoned() {
  for (const name of readdirSync(tmpdir())) {
    const pid = name.startsWith(throwawayPrefix) && Number(name.slice(throwawayPrefix.length).split('-')[0]);
    if (pid && !isRunning(pid)) rmSync(join(tmpdir(), name), { recursive: true, force: true });
  }
}
