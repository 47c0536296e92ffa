import type { BaselineCandidate } from './candidate.js';

/** The candidate with the least distance; of equals the one with fewer spacers, then with less pressure. */
export function nearest<T extends BaselineCandidate>(
  candidates: readonly T[],
  distance: (candidate: T) => number,
): T | undefined {
  let best: T | undefined;
  for (const candidate of candidates) {
    const order =
      best === undefined
        ? -1
        : distance(candidate) - distance(best) ||
          candidate.spacers - best.spacers ||
          candidate.pressurePa - best.pressurePa;
    if (order < 0) best = candidate;
  }
  return best;
}
