import { formatClock } from '../format/time.js';
import { NoConnection } from '../http/problem.js';
import { texts } from './texts.js';

/** What is known of the age of a reading. */
export interface Aged {
  readonly dataUpdatedAt: number;
  readonly isFetching: boolean;
  readonly failureReason: Error | null;
  readonly error: Error | null;
}

/** Younger readings are as good as new, ms. */
const FRESH_MS = 60_000;

/** How old what is shown is, where it could not be read again: "as of Tue 24 Nov, 14:10, no signal". */
export function asOf(readings: readonly Aged[], now: number): string | null {
  const shown = readings.filter(({ dataUpdatedAt }) => dataUpdatedAt > 0);
  const oldest = Math.min(...shown.map(({ dataUpdatedAt }) => dataUpdatedAt));
  if (shown.length === 0 || now - oldest < FRESH_MS) {
    return shown.some(isCutOff) ? texts.asOf(formatClock(oldest, now), true) : null;
  }
  return texts.asOf(formatClock(oldest, now), shown.some(isCutOff));
}

const isCutOff = ({ failureReason, error }: Aged) =>
  failureReason instanceof NoConnection || error instanceof NoConnection;
