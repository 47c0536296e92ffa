import { AsyncLocalStorage } from 'node:async_hooks';
import { FairQueue } from '../compute/fair-queue.js';
import { requestOrigin } from '../http/request-origin.js';

/** Set where a transaction may compute for long. */
const inPlace = new AsyncLocalStorage<true>();

/** Ends a transaction that has come to where it would compute for long. It is begun again as soon as there is a place. */
class NeedsPlace extends Error {
  constructor() {
    super('A transaction that computes for long must run in a place for it.');
  }
}

/**
 * To be called within a transaction before anything that takes long, and before any lock that others hold for long:
 * the transaction goes on only if it has a place, and is begun again in one otherwise.
 */
export function needPlaceToCompute(): void {
  if (!inPlace.getStore()) throw new NeedsPlace();
}

/** Runs `work` as if it had a place, where nobody else needs connections. */
export const withoutPlaces = <T>(work: () => T): T => inPlace.run(true, work);

/**
 * Places for transactions that compute for long, or wait for another that does: each holds a connection meanwhile, and
 * without them a few such questions would hold every connection of the process. Each account in turn gets one.
 */
export class ComputingPlaces {
  private readonly waiting = new FairQueue<() => void>();

  constructor(private free: number) {}

  /**
   * Runs the transaction, and from its start again in a place where it turns out to need one: then `later`, since time has
   * passed and what was known of who asks may have changed.
   */
  async run<T>(transaction: () => Promise<T>, later: () => Promise<T>): Promise<T> {
    if (inPlace.getStore()) return transaction();
    try {
      return await transaction();
    } catch (error) {
      if (!(error instanceof NeedsPlace)) throw error;
    }
    await this.take(requestOrigin()?.accountId ?? '');
    try {
      return await inPlace.run(true, later);
    } finally {
      this.leave();
    }
  }

  private async take(whose: string): Promise<void> {
    if (this.free > 0) this.free -= 1;
    else await new Promise<void>((resolve) => this.waiting.add(whose, resolve));
  }

  private leave(): void {
    const next = this.waiting.next();
    if (next) next();
    else this.free += 1;
  }
}
