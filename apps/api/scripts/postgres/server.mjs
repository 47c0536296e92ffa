import { spawn } from 'node:child_process';
import {
  closeSync,
  copyFileSync,
  existsSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { anyFreePort, isFree } from '../process/ports.mjs';
import { commandOf, isRunning } from '../process/table.mjs';
import { databaseName, ownerRole } from './cluster.mjs';

const host = '127.0.0.1';
const guardSource = fileURLToPath(new URL('guard.sh', import.meta.url));
const POLL_MS = 20;
/** A server that was killed may have much to recover; it is given this long before the start is given up. */
const READY_LIMIT_MS = 600_000;
const SHUTDOWN_LIMIT_MS = 60_000;
/** The log is begun anew beyond this size, in bytes. */
const LOG_LIMIT = 10_000_000;
const LOG_TAIL_LINES = 10;
/** How the log ends where Postgres will not start beside processes of a killed server that have not ended yet. */
const STILL_IN_USE = /pre-existing shared memory block .* is still in use(\n.*){0,2}$/;
const RETRY_MS = 200;

/**
 * @typedef {object} Server
 * @property {string} url          of the database, as its owner
 * @property {number} port
 * @property {Promise<string>} ended  settles with how it ended when the server is gone
 * @property {() => Promise<void>} stop  shuts it down; nothing that was committed is lost
 */

/**
 * Starts Postgres on a cluster that we hold the lock of, and waits until it answers. It ends with us.
 * @param {import('./cluster.mjs').Cluster} cluster
 * @param {string} binaries
 * @param {{ port?: number | undefined, settings?: Record<string, string> }} [options]
 *   port: the one that must be had; without it that of the last start, or another where that is taken
 * @returns {Promise<Server>}
 */
export async function startServer(cluster, binaries, { port: wanted, settings } = {}) {
  await endOtherServer(cluster.data);
  const port = wanted ?? (await choosePort(cluster.portFile));
  const limit = performance.now() + SHUTDOWN_LIMIT_MS;
  for (;;) {
    try {
      return await startOnce(cluster, binaries, port, settings);
    } catch (error) {
      // Whoever writes for a server ends once it sees that the server was killed, which may be after a long write.
      const isInUse = error instanceof Error && STILL_IN_USE.test(error.message);
      if (!isInUse || performance.now() > limit) throw error;
      await sleep(RETRY_MS);
    }
  }
}

/**
 * @param {import('./cluster.mjs').Cluster} cluster
 * @param {string} binaries
 * @param {number} port
 * @param {Record<string, string>} [settings]
 * @returns {Promise<Server>}
 */
async function startOnce(cluster, binaries, port, settings) {
  const log = openLog(cluster.log);
  // Beside the data, since the database's account may not be able to read files of the clone.
  const guard = join(dirname(cluster.data), 'guard.sh');
  copyFileSync(guardSource, guard);
  const options = {
    listen_addresses: host,
    unix_socket_directories: '',
    timezone: 'UTC',
    port: String(port),
    ...settings,
  };
  const child = spawn(
    '/bin/sh',
    [
      ...[guard, join(binaries, 'postgres'), '-D', cluster.data],
      ...Object.entries(options).flatMap(([name, value]) => ['-c', `${name}=${value}`]),
    ],
    // Of its own process group, so that Ctrl-C reaches us alone and we stop the service before the database.
    { ...cluster.account, cwd: '/', detached: true, stdio: ['pipe', log, log] },
  );
  closeSync(log);
  // The pipe breaks when the guard ends first; `ended` tells that.
  child.stdin?.on('error', () => undefined);
  const ended = new Promise((/** @type {(how: string) => void} */ resolve) => {
    child.on('error', (error) => resolve(error.message));
    child.on('exit', (code, signal) => {
      child.stdin?.destroy();
      resolve(signal ? `was ended by ${signal}` : `ended with status ${code}`);
    });
  });
  const isGone = () => child.exitCode !== null || child.signalCode !== null || child.pid === undefined;
  await waitUntilReady(cluster, isGone);
  return {
    url: `postgres://${ownerRole}:${cluster.password}@${host}:${port}/${databaseName}`,
    port,
    ended,
    stop: async () => {
      child.stdin?.end();
      await Promise.race([ended, sleep(SHUTDOWN_LIMIT_MS, undefined, { ref: false })]);
    },
  };
}

/** Keeps the port between starts, so that an open psql session finds it again. @param {string} file */
async function choosePort(file) {
  const remembered = existsSync(file) ? Number(readFileSync(file, 'utf8')) : 0;
  if (remembered && (await isFree(remembered, host))) return remembered;
  const port = await anyFreePort(host);
  writeFileSync(file, `${port}\n`);
  return port;
}

/** @param {string} file */
function openLog(file) {
  const size = statSync(file, { throwIfNoEntry: false })?.size ?? 0;
  return openSync(file, size > LOG_LIMIT ? 'w' : 'a', 0o600);
}

/** @param {import('./cluster.mjs').Cluster} cluster @param {() => boolean} isGone */
async function waitUntilReady(cluster, isGone) {
  // Not by the time of day, which may be set while the database recovers.
  const limit = performance.now() + READY_LIMIT_MS;
  while (readPidFile(cluster.data)?.status !== 'ready') {
    if (isGone() || performance.now() > limit) {
      const tail = readFileSync(cluster.log, 'utf8').trimEnd().split('\n').slice(-LOG_TAIL_LINES).join('\n');
      throw new Error(`Postgres did not start. The end of its log, ${cluster.log}:\n${tail}`);
    }
    await sleep(POLL_MS);
  }
}

/**
 * Ends a server that an earlier start left on this data (its guard was killed as well), and removes a pid file
 * whose number now belongs to another program, which Postgres itself cannot tell from a server.
 * @param {string} data
 */
async function endOtherServer(data) {
  const other = readPidFile(data);
  if (!other) return;
  const isServer = () => isRunning(other.pid) && commandOf(other.pid).includes(data);
  // Fast shutdown, then, for one that hangs, the immediate one: the log is replayed at the next start.
  for (const signal of ['SIGINT', 'SIGQUIT']) {
    if (isServer()) process.kill(other.pid, signal);
    await waitWhile(isServer, SHUTDOWN_LIMIT_MS);
  }
  if (isServer()) {
    throw new Error(`Another Postgres (pid ${other.pid}) runs on ${data} and does not end.`);
  }
  rmSync(join(data, 'postmaster.pid'), { force: true });
}

/** @param {() => boolean} condition @param {number} limitMs */
async function waitWhile(condition, limitMs) {
  const limit = performance.now() + limitMs;
  while (condition() && performance.now() < limit) await sleep(POLL_MS);
}

/** Postgres's own notes on the running server: its pid on the first line, its status on the last. @param {string} data */
function readPidFile(data) {
  try {
    const lines = readFileSync(join(data, 'postmaster.pid'), 'utf8').trimEnd().split('\n');
    return { pid: Number(lines[0]), status: lines[7]?.trim() };
  } catch {
    return undefined;
  }
}
