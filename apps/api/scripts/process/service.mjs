import { spawn } from 'node:child_process';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { root } from '../places.mjs';

const endWithParent = new URL('end-with-parent.mjs', import.meta.url).href;
const main = fileURLToPath(new URL('../../dist/main.js', import.meta.url));
const POLL_MS = 25;
/** Requests in progress are given this long before the service is ended at once. */
const DRAIN_LIMIT_MS = 15_000;

/**
 * @typedef {object} Service
 * @property {Promise<string>} ended    settles with a sentence when the service is gone
 * @property {() => Promise<void>} stop  lets it finish its requests
 */

/**
 * Starts the built service. It ends with us.
 * @param {NodeJS.ProcessEnv} env
 * @returns {Service}
 */
export function startService(env) {
  const child = spawn(process.execPath, ['--import', endWithParent, main], {
    cwd: root,
    env,
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
  return {
    ended,
    stop: async () => {
      child.kill('SIGTERM');
      await Promise.race([ended, sleep(DRAIN_LIMIT_MS, undefined, { ref: false })]);
      child.kill('SIGKILL');
      await ended;
    },
  };
}

/**
 * Starts the service and waits until it says that it and its database are ready.
 * @param {NodeJS.ProcessEnv} env
 * @param {string} address
 * @param {AbortSignal} signal
 */
export async function startReadyService(env, address, signal) {
  const service = startService(env);
  const giveUp = new AbortController();
  const ready = waitUntilReady(address, AbortSignal.any([signal, giveUp.signal]));
  try {
    const how = await Promise.race([service.ended, ready]);
    if (how !== undefined) throw new Error(`The service ${how}.`);
    return service;
  } catch (error) {
    giveUp.abort();
    await service.stop();
    throw error;
  }
}

/** @param {string} address @param {AbortSignal} signal @returns {Promise<undefined>} */
async function waitUntilReady(address, signal) {
  for (;;) {
    const answer = await fetch(`${address}/api/v1/health/ready`, { signal }).catch(() => undefined);
    await answer?.body?.cancel();
    if (answer?.ok) return undefined;
    await sleep(POLL_MS, undefined, { signal });
  }
}
