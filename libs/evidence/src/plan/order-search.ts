import { shuffled, uniformNumbers } from '../numerics/random.js';
import { sessionSums, spreadOf, trendCost } from './place-balance.js';

/** Starts of the search and exchanges tried from each: the best order of 24 runs is found in a few. */
const STARTS = 60;
const MAX_EXCHANGES = 200;
/** Costs nearer than this are the same. */
const SAME = 1e-12;

/**
 * Best order found for `remaining` runs of each arm at the given places, behind runs that are ridden already.
 *
 * The mirror of a random order is among the starts, which is perfectly balanced against a linear trend where the runs of
 * each arm are even. The same seed gives the same order. `remaining[arm]` is a count; `positions` has as many places as
 * runs remain.
 */
export function bestOrder(
  remaining: readonly number[],
  positions: readonly number[],
  seed: number,
  ridden: readonly { arm: number; position: number }[] = [],
): number[] {
  const uniform = uniformNumbers(seed);
  const runs = remaining.flatMap((count, arm) => new Array<number>(count).fill(arm));
  const sums = sessionSums(remaining.length, ridden, positions);
  return cheapestOrder(
    [mirrored(remaining, uniform) ?? shuffled(runs, uniform)],
    (order) => trendCost(spreadOf(sums(order))),
    uniform,
  );
}

/**
 * Cheapest order found of the runs in `given`, orders of the same arm numbers: exchanges of two runs, from each of these and
 * from random ones, until none helps. Never dearer than any of them; costs are not below 0.
 */
export function cheapestOrder(
  given: readonly [readonly number[], ...(readonly number[])[]],
  costOf: (order: readonly number[]) => number,
  uniform: () => number,
): number[] {
  const runs = given[0].toSorted((a, b) => a - b);
  let best = [...given[0]];
  let least = costOf(best);
  for (let start = 0; start < Math.max(STARTS, given.length) && least > 0; start += 1) {
    const order = [...(given[start] ?? shuffled(runs, uniform))];
    const reached = exchange(order, costOf);
    if (reached < least - SAME) {
      best = order;
      least = reached;
    }
  }
  return best;
}

/** A random half and its mirror image; undefined where an arm has an odd number of runs. */
function mirrored(remaining: readonly number[], uniform: () => number): number[] | undefined {
  if (remaining.some((count) => count % 2 !== 0)) return undefined;
  const half = shuffled(
    remaining.flatMap((count, arm) => new Array<number>(count / 2).fill(arm)),
    uniform,
  );
  return [...half, ...half.toReversed()];
}

/** Exchanges pairs in place as long as one lowers the cost; returns the cost reached. */
function exchange(order: number[], costOf: (order: readonly number[]) => number): number {
  let current = costOf(order);
  for (let round = 0; round < MAX_EXCHANGES; round += 1) {
    let least = current;
    let pair: readonly [number, number] | undefined;
    for (let i = 0; i < order.length; i += 1) {
      for (let j = i + 1; j < order.length; j += 1) {
        if (order[i] === order[j]) continue;
        swap(order, i, j);
        const trial = costOf(order);
        swap(order, i, j);
        if (trial < least - SAME) {
          least = trial;
          pair = [i, j];
        }
      }
    }
    if (pair === undefined) break;
    swap(order, ...pair);
    current = least;
  }
  return current;
}

function swap(order: number[], i: number, j: number): void {
  [order[i], order[j]] = [order[j] as number, order[i] as number];
}
