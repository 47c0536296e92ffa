import { setImmediate } from 'node:timers/promises';

/** Others wait no longer than this for a loop that takes breaks, and no break is worth taking sooner. */
const LONGEST_STRETCH_MS = 20;

/** The breaks of a loop that works long in the thread that serves everybody: in each, what has come in is served. */
export class Breaks {
  private since = performance.now();

  /** Whether it is time for one; asked once a round. */
  get isDue(): boolean {
    return performance.now() - this.since > LONGEST_STRETCH_MS;
  }

  async take(): Promise<void> {
    await setImmediate();
    this.since = performance.now();
  }
}
