import { Injectable } from '@nestjs/common';
import { Refusal } from '../errors/refusal.js';

const FREE_TRIES = 5;
const FIRST_DELAY_MS = 1_000;
const LONGEST_DELAY_MS = 300_000;
/** Forget who has been quiet for so long. */
const FORGET_MS = 900_000;
const MAX_REMEMBERED = 10_000;

interface Failures {
  count: number;
  lastAt: number;
}

class TooManyTries extends Refusal {
  constructor(override readonly retryAfterSeconds: number) {
    super('sign-in.too-many-tries', 'too-many-requests', `Too many tries. Wait ${retryAfterSeconds} s.`);
  }
}

/**
 * Growing delays after failed sign-ins, by address and account. Kept in memory: with several processes each
 * counts for itself, which multiplies the allowed tries by their number and no more.
 */
@Injectable()
export class Throttle {
  private readonly failures = new Map<string, Failures>();

  /** @throws TooManyTries while the delay after the last failure is not over. */
  check(key: string, now: number): void {
    const failures = this.failures.get(key);
    if (!failures || failures.count < FREE_TRIES) return;
    const delay = Math.min(FIRST_DELAY_MS * 2 ** (failures.count - FREE_TRIES), LONGEST_DELAY_MS);
    const wait = failures.lastAt + delay - now;
    if (wait > 0) throw new TooManyTries(Math.ceil(wait / 1_000));
  }

  failed(key: string, now: number): void {
    const known = this.failures.get(key);
    const count = known && now - known.lastAt < FORGET_MS ? known.count + 1 : 1;
    this.failures.delete(key);
    this.failures.set(key, { count, lastAt: now });
    // The oldest goes first: a Map keeps the order of insertion.
    if (this.failures.size > MAX_REMEMBERED) {
      const oldest = this.failures.keys().next().value;
      if (oldest !== undefined) this.failures.delete(oldest);
    }
  }

  succeeded(key: string): void {
    this.failures.delete(key);
  }
}
