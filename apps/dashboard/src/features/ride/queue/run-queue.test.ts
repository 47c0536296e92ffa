import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { SendOutcome } from './answer.js';
import type { QueuedRun } from './queued-run.js';
import { RunQueue } from './run-queue.js';

// No locks between tabs, as on a plain address of the local network.
beforeEach(() => vi.stubGlobal('navigator', {}));
afterEach(() => vi.unstubAllGlobals());

const RUN: QueuedRun = {
  key: 'run',
  account: 'me',
  teamId: 'team',
  loggedAt: '2026-05-09T10:00:00.000Z',
  message: { bikeId: 'bike' },
  names: { bike: '', track: '' },
  refusal: null,
};

const until = (condition: () => boolean) => vi.waitUntil(condition, { timeout: 10_000 });
const isIdle = (queue: RunQueue) => () => !queue.snapshot().sending;

/** A queue of one run whose line answers as it is told, each time when it is told to. */
async function queueOfOne() {
  const kept = new Map([[RUN.key, RUN]]);
  const asked: ((outcome: SendOutcome) => void)[] = [];
  const queue = new RunQueue('me', () => undefined, {
    all: async () => [...kept.values()],
    put: async (run) => void kept.set(run.key, run),
    remove: async (key) => void kept.delete(key),
    send: async () => ({ kind: 'taken' }),
    session: () => new Promise((answer) => asked.push(answer)),
  });
  await queue.retry(RUN);
  await until(() => asked.length === 1);
  return { queue, kept, asked };
}

it('tries again at once where the line came back while a try was failing', async () => {
  const { queue, kept, asked } = await queueOfOne();
  let hasPaused = false;
  queue.subscribe(() => (hasPaused ||= isIdle(queue)()));
  await queue.send();
  asked[0]?.({ kind: 'unsure' });
  await until(() => asked.length === 2);
  expect(hasPaused).toBe(false);
  asked[1]?.({ kind: 'taken' });
  await until(isIdle(queue));
  expect([...kept.keys()]).toEqual([]);
});

it('does not ask on and on for who is signed out', async () => {
  const { queue, kept, asked } = await queueOfOne();
  await queue.send();
  asked[0]?.({ kind: 'signed-out' });
  await until(isIdle(queue));
  expect(asked).toHaveLength(1);
  expect([...kept.keys()]).toEqual([RUN.key]);
  expect(queue.snapshot().last).toBe('signed-out');
});
