import type { OrderTrend } from '../linear/run-design.js';
import { shuffled } from '../numerics/random.js';
import { balancedInflation } from './balanced-inflation.js';
import { bestOrder } from './order-search.js';
import { williamsRows } from './williams.js';

/** What the orders of several riders are drawn for. */
export interface RiderOrdersRequest {
  readonly arms: number;
  /** At least 2. */
  readonly riders: number;
  readonly runsAnArm: number;
  readonly trend: OrderTrend;
  readonly seed: number;
}

/** Of a hundred assignments of three rows to three riders ten are ideal: all miss with a chance below 1e-13. */
const DRAWS = 300;
/** Ratios nearer than this are the same. */
const SAME = 1e-9;

/**
 * Orders of arm numbers, one a rider, whose least certain difference has the smallest variance found among `draws`
 * assignments: under the trend that is taken out, then under the other one.
 *
 * Williams rows (williams1949), each followed by its mirror image, given to riders anew in each draw. Where none of these
 * is free of a linear trend, draws of the best order of one rider, with the arms exchanged for each, compete with them.
 * The same uniform numbers give the same orders, and more draws never worse ones.
 */
export function riderOrders(
  request: RiderOrdersRequest,
  uniform: () => number,
  draws: number = DRAWS,
): number[][] {
  const { arms, riders, runsAnArm } = request;
  const rows = williamsRows(arms);
  const all = Array.from({ length: arms }, (_, arm) => arm);
  const williams = best(request, draws, () => {
    const names = shuffled(all, uniform);
    const rounds = Array.from({ length: Math.ceil(riders / rows.length) }, () => shuffled(rows, uniform));
    return rounds
      .flat()
      .slice(0, riders)
      .map((row) => withMirrors(renamed(row, names), runsAnArm));
  });
  if (williams.ratios.linear <= 1 + SAME) return williams.orders;
  const single = bestOrder(
    new Array<number>(arms).fill(runsAnArm),
    Array.from({ length: arms * runsAnArm }, (_, i) => i + 1),
    request.seed,
  );
  const exchanged = best(request, draws, () =>
    Array.from({ length: riders }, () => renamed(single, shuffled(all, uniform))),
  );
  return isBetter(exchanged, williams, request.trend) ? exchanged.orders : williams.orders;
}

interface Candidate {
  readonly orders: number[][];
  readonly ratios: ReturnType<typeof balancedInflation>;
}

function best({ arms, trend }: RiderOrdersRequest, draws: number, draw: () => number[][]): Candidate {
  const drawn = (): Candidate => {
    const orders = draw();
    return { orders, ratios: balancedInflation(orders, arms) };
  };
  let least = drawn();
  for (let i = 1; i < draws; i += 1) {
    const next = drawn();
    if (isBetter(next, least, trend)) least = next;
  }
  return least;
}

function isBetter({ ratios: a }: Candidate, { ratios: b }: Candidate, trend: OrderTrend): boolean {
  const [first, second] =
    trend === 'quadratic' ? (['quadratic', 'linear'] as const) : (['linear', 'quadratic'] as const);
  // Infinite ratios are equal, though their difference is not a number.
  if (a[first] !== b[first] && Math.abs(a[first] - b[first]) > SAME) return a[first] < b[first];
  return a[second] < b[second] - SAME;
}

const renamed = (row: readonly number[], names: readonly number[]): number[] =>
  row.map((arm) => names[arm] as number);

const withMirrors = (row: readonly number[], times: number): number[] =>
  Array.from({ length: times }, (_, i) => (i % 2 === 0 ? row : row.toReversed())).flat();
