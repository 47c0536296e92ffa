import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { root } from '../places.mjs';

const entry = fileURLToPath(new URL('service-entry.mjs', import.meta.url));
/**
 * How the service's process, its computing thread included, keeps its memory small: garbage is collected once the heap
 * has grown by a third, where it would else be let grow to three times what is in use, as if there were nothing else on
 * the machine. Costs no rate that could be measured.
 */
export const MEMORY_FLAGS = ['--heap-growing-percent=30'];
const POLL_MS = 25;
/** Requests in progress are given this long before the service is ended at once. */
const DRAIN_LIMIT_MS = 15_000;

/**
 * @typedef {object} Service
 * @property {number} pid
 * @property {Promise<void>} listening  settles when it listens at its port
 * @property {Promise<string>} ended    settles with how it ended when the service is gone
 * @property {() => Promise<void>} stop  lets it finish its requests
 *
 * @typedef {Service & { begin(settings: NodeJS.ProcessEnv): void }} LoadedService
 */

/**
 * Loads the built service into a process of its own, where it waits for its settings. It ends with us.
 * @returns {LoadedService}
 */
export function loadService() {
  const child = spawn(process.execPath, [...MEMORY_FLAGS, entry], {
    cwd: root,
    // The owner's address of the database is not for what serves.
    env: { NODE_ENV: 'production', ...process.env, DATABASE_URL: undefined },
    // Of its own process group: Ctrl-C reaches us alone, so that the service is stopped once and in order.
    detached: true,
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
  const ended = new Promise((/** @type {(how: string) => void} */ resolve) => {
    child.on('error', (error) => resolve(error.message));
    child.on('exit', (code, signal) =>
      resolve(signal ? `was ended by ${signal}` : `ended with status ${code}`),
    );
  });
  const listening = new Promise((/** @type {(value: void) => void} */ resolve) => {
    child.once('message', () => resolve());
  });
  return {
    // None where the process could not be started; `ended` says why.
    pid: child.pid ?? 0,
    listening,
    ended,
    // One that has ended cannot be told anything; `ended` says why.
    begin: (settings) => void child.send(settings, () => undefined),
    stop: async () => {
      child.kill('SIGTERM');
      await Promise.race([ended, sleep(DRAIN_LIMIT_MS, undefined, { ref: false })]);
      child.kill('SIGKILL');
      await ended;
    },
  };
}

/** @param {NodeJS.ProcessEnv} settings @returns {Service} */
export function startService(settings) {
  const service = loadService();
  service.begin(settings);
  return service;
}

/**
 * Waits until the service says that it and its database are ready; one that ends before or takes too long is an error.
 * @param {Service} service
 * @param {string} address
 * @param {AbortSignal} signal
 */
export async function untilReady(service, address, signal) {
  const giveUp = new AbortController();
  const either = AbortSignal.any([signal, giveUp.signal]);
  const ready = service.listening.then(() => poll(address, either));
  const stopped = once(either, 'abort').then(() => either.throwIfAborted());
  // Each is heard of below as long as somebody waits for it.
  for (const one of [ready, stopped]) one.catch(() => undefined);
  try {
    const how = await Promise.race([service.ended, ready, stopped]);
    if (how !== undefined) throw new Error(`The service ${how}.`);
  } catch (error) {
    giveUp.abort();
    await service.stop();
    throw error;
  }
}

/** @param {string} address @param {AbortSignal} signal @returns {Promise<undefined>} */
async function poll(address, signal) {
  for (;;) {
    const answer = await fetch(`${address}/api/v1/health/ready`, { signal }).catch(() => undefined);
    await answer?.body?.cancel();
    if (answer?.ok) return undefined;
    await sleep(POLL_MS, undefined, { signal });
  }
}
