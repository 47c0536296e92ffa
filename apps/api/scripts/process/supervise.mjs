import { setTimeout as sleep } from 'node:timers/promises';

/** The wait before a part that ended is started again; it doubles with each end, and starts over once the part has run for a while. */
const FIRST_WAIT_MS = 500;
const LONGEST_WAIT_MS = 15_000;
const STEADY_AFTER_MS = 60_000;

/** @typedef {{ ended: Promise<string>, stop(): Promise<void> }} Part */

/**
 * Keeps a part of the house running: starts it again whenever it ends by itself, until told to stop.
 * @param {string} name
 * @param {Part} first  already running
 * @param {() => Part | Promise<Part>} start
 */
export function supervise(name, first, start) {
  let part = first;
  const stopping = new AbortController();
  const keeping = keep();
  return {
    stop: async () => {
      stopping.abort();
      await part.stop();
      await keeping;
    },
  };

  async function keep() {
    let wait = FIRST_WAIT_MS;
    // Not by the time of day, which may be set meanwhile.
    let startedAt = performance.now();
    for (;;) {
      const how = await part.ended;
      if (stopping.signal.aborted) return;
      if (performance.now() - startedAt > STEADY_AFTER_MS) wait = FIRST_WAIT_MS;
      console.error(`${name} ${how}. It is started again.`);
      await sleep(wait, undefined, { signal: stopping.signal }).catch(() => undefined);
      if (stopping.signal.aborted) return;
      wait = Math.min(2 * wait, LONGEST_WAIT_MS);
      startedAt = performance.now();
      part = await startAgain();
      if (stopping.signal.aborted) return part.stop();
    }
  }

  async function startAgain() {
    try {
      return await start();
    } catch (error) {
      return {
        ended: Promise.resolve(`could not be started: ${String(error)}`),
        stop: () => Promise.resolve(),
      };
    }
  }
}
