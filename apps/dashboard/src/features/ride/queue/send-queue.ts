import type { SendOutcome } from './answer.js';
import { inOrder, type QueuedRun } from './queued-run.js';

/** Where the runs are kept, and how one is sent. */
export interface QueueParts {
  readonly all: () => Promise<readonly QueuedRun[]>;
  readonly put: (run: QueuedRun) => Promise<void>;
  readonly remove: (key: string) => Promise<void>;
  readonly send: (run: QueuedRun) => Promise<SendOutcome>;
}

/** How sending ended: nothing waits any more, the line is gone, or the session is. */
export type SendResult = 'done' | 'no-line' | 'signed-out';

/**
 * Sends what waits, oldest first, each until the API has said yes or no. A run leaves the device only after the
 * yes; after a no it stays with the reason, and the others go on. Must run in one tab at a time.
 */
export async function sendQueue(
  account: string,
  { all, put, remove, send }: QueueParts,
): Promise<SendResult> {
  const waiting = (await all()).filter((run) => run.account === account && run.refusal === null);
  for (const run of inOrder(waiting)) {
    const outcome = await send(run);
    if (outcome.kind === 'unsure') return 'no-line';
    if (outcome.kind === 'signed-out') return 'signed-out';
    if (outcome.kind === 'taken') await remove(run.key);
    else await put({ ...run, refusal: outcome.refusal });
  }
  return 'done';
}
