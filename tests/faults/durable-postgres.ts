import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { Client } from 'pg';
import { startEmbedded } from '../../apps/api/scripts/postgres/embedded.mjs';
import { clusterName } from '../../apps/api/scripts/places.mjs';
import { commandOf, parentOf } from '../../apps/api/scripts/process/table.mjs';
import { kill, waitUntil } from './house.js';

/** How Postgres calls the process that serves one connection of the service. */
const BACKEND = /^postgres: loamledger_app/;
const MEMORY = '/dev/shm';
const START_TRIES = 100;
const RETRY_MS = 50;
const END_LIMIT_MS = 20_000;

/** A Postgres that writes through before it confirms, as that of `npm start`, and whose processes can be killed. */
export interface DurablePostgres {
  /** As its owner; the same after each start. */
  readonly url: string;
  readonly home: string;
  /** Kills every process of the server at once, as a power cut would. */
  killAll(): Promise<void>;
  /** Starts it again on its data. */
  startAgain(): Promise<void>;
  /** Shuts it down in order; its data stays. */
  shutDown(): Promise<void>;
  /** Kills one process that serves a connection; the server then ends all others and recovers. False: there was none. */
  killBackend(): boolean;
  query<Row extends object>(statement: string, values?: unknown[]): Promise<Row[]>;
  clear(): Promise<void>;
}

export async function startDurable(): Promise<DurablePostgres> {
  // A kill loses what a process had not handed to the system, wherever the files are. In memory, where there is such a
  // folder, each recovery is spared the wait for a disk that others use too.
  const folder = existsSync(MEMORY) ? MEMORY : tmpdir();
  const home = mkdtempSync(join(folder, 'loamledger-durable-'));
  let server = await startEmbedded(home);
  const { url, port } = server;
  return {
    url,
    home,
    killAll: async () => {
      const postmaster = postmasterOf(home);
      // The parent first, or it would already be ending the others in order.
      for (const pid of [postmaster, ...childrenOf(postmaster)]) kill(pid);
      await server.ended;
    },
    startAgain: async () => {
      server = await patiently(() => startEmbedded(home, port));
    },
    shutDown: () => server.stop(),
    killBackend: () => {
      const backends = childrenOf(postmasterOf(home)).filter((pid) => BACKEND.test(commandOf(pid)));
      const chosen = backends[Math.floor(Math.random() * backends.length)];
      if (chosen !== undefined) kill(chosen);
      return chosen !== undefined;
    },
    query: (statement, values) => ask(url, statement, values),
    clear: async () => {
      await server.stop();
      rmSync(home, { recursive: true, force: true });
    },
  };
}

const postmasterOf = (home: string): number =>
  Number(readFileSync(join(home, clusterName, 'postmaster.pid'), 'utf8').split('\n', 1)[0]);

/** The processes that a process has started and that live. */
export const childrenOf = (pid: number): number[] =>
  readdirSync('/proc')
    .map(Number)
    .filter((one) => one > 0 && parentOf(one) === pid);

/** What was killed may hold its shared memory, or its port, for a moment longer. */
async function patiently<T>(start: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await start();
    } catch (error) {
      if (tries >= START_TRIES) throw error;
      await sleep(RETRY_MS);
    }
  }
}

async function ask<Row extends object>(
  url: string,
  statement: string,
  values: unknown[] = [],
): Promise<Row[]> {
  let rows: Row[] | undefined;
  let failure: unknown;
  // It may still be recovering.
  await waitUntil(async () => {
    const client = new Client({ connectionString: url });
    client.on('error', () => undefined);
    try {
      await client.connect();
      rows = (await client.query<Row>(statement, values)).rows;
    } catch (error) {
      failure = error;
    } finally {
      await client.end().catch(() => undefined);
    }
    return rows !== undefined;
  }, END_LIMIT_MS);
  if (!rows) throw failure;
  return rows;
}
