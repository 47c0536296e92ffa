import { shuffled, uniformNumbers } from '../numerics/random.js';

/** How far an order is from being balanced against trends; 0 is perfect. */
export interface OrderImbalance {
  /** Spread of the arms' mean places, in squared runs. */
  linear: number;
  /** Spread of the arms' mean squared distances from the middle, in runs to the fourth. */
  quadratic: number;
}

/**
 * Spread of the arms' mean positions and mean squared positions: an order is free of a linear (quadratic) trend when
 * the first (both) are 0 (cox1951). `arms` are arm numbers in order, `positions` their places in the session.
 */
export function imbalanceOf(arms: readonly number[], positions: readonly number[]): OrderImbalance {
  const n = arms.length;
  if (n === 0) return { linear: 0, quadratic: 0 };
  const centre = positions.reduce((sum, value) => sum + value, 0) / n;
  const square = positions.reduce((sum, value) => sum + (value - centre) ** 2, 0) / n;
  const sums = new Map<number, { runs: number; first: number; second: number }>();
  for (const [i, arm] of arms.entries()) {
    const o = (positions[i] as number) - centre;
    const sum = sums.get(arm) ?? { runs: 0, first: 0, second: 0 };
    sums.set(arm, { runs: sum.runs + 1, first: sum.first + o, second: sum.second + o * o - square });
  }
  let linear = 0;
  let quadratic = 0;
  for (const { runs, first, second } of sums.values()) {
    linear += (first / runs) ** 2;
    quadratic += (second / runs) ** 2;
  }
  return { linear, quadratic };
}

/** Random starts of the search and exchanges tried from each: the best order of 24 runs is found in a few. */
const STARTS = 60;
const MAX_EXCHANGES = 200;
/** A linear trend is usual and a quadratic one is not, so the first is balanced first: weight in runs². */
const LINEAR_WEIGHT = 1e3;

const cost = ({ linear, quadratic }: OrderImbalance): number => LINEAR_WEIGHT * linear + quadratic;

/**
 * Best order found for `remaining` runs of each arm at the given places, behind runs that are ridden already.
 *
 * Exchanges of two runs from random starts until none helps; the mirror of a random order is among the starts, which
 * is perfectly balanced against a linear trend where the runs of each arm are even. The same seed gives the same
 * order. `remaining[arm]` is a count; `positions` has as many places as runs remain.
 */
export function bestOrder(
  remaining: readonly number[],
  positions: readonly number[],
  seed: number,
  ridden: { arms: readonly number[]; positions: readonly number[] } = { arms: [], positions: [] },
): number[] {
  const uniform = uniformNumbers(seed);
  const runs = remaining.flatMap((count, arm) => new Array<number>(count).fill(arm));
  const places = [...ridden.positions, ...positions];
  const costOf = (order: readonly number[]): number => cost(imbalanceOf([...ridden.arms, ...order], places));
  let best = mirrored(remaining, uniform) ?? shuffled(runs, uniform);
  let least = costOf(best);
  for (let start = 0; start < STARTS && least > 0; start += 1) {
    const order = start === 0 ? [...best] : shuffled(runs, uniform);
    const reached = exchange(order, costOf);
    if (reached < least - 1e-12) {
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
        if (trial < least - 1e-12) {
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
