import { kenwardRoger } from '../linear/kenward-roger.js';
import { fitMixed } from '../linear/mixed-model.js';
import type { OrderTrend } from '../linear/run-design.js';
import { timeSystem, type TimedRun } from './time-model.js';

/** Differences that hold for riders in general, on the log scale. */
export interface RiderModel {
  differences: { arm: string; estimate: number; se: number; df: number }[];
  covariance: readonly (readonly number[])[];
  /** Between runs of one rider on one arm, (log time)², with its degrees of freedom. */
  variance: number;
  df: number;
  /** Standard deviation, over riders, of what an arm does for them beyond the mean; log time, may be 0. */
  riderSd: number;
}

/**
 * Log time = arm + order trend + a level for each rider and session + what the arm does for this rider (random) + scatter,
 * by restricted likelihood, with the standard errors and degrees of freedom of kenward1997: for riders in general.
 *
 * Runs may be unbalanced; for balanced ones it is the two-way fit of rider means on (riders − 1)(arms − 1) degrees of
 * freedom. Levels of riders are fixed: each rider and session has one already, and what levels of riders that were drawn
 * at random would add is next to nothing, as riders differ by far more than arms. Null where the runs do not show how
 * riders differ in what suits them, as with one rider, or with one arm a rider.
 */
export function fitRiders(runs: readonly TimedRun[], current: string, trend: OrderTrend): RiderModel | null {
  const system = timeSystem(runs, current, trend);
  if (system === null) return null;
  const keys = runs.map(({ rider, arm }) => JSON.stringify([rider, arm]));
  const cells = new Map([...new Set(keys)].map((key, i) => [key, i]));
  const mixed = fitMixed(
    system.design.x,
    system.fit,
    keys.map((key) => cells.get(key) as number),
  );
  if (mixed === null) return null;
  const { contrasts, covariance, rowDf } = kenwardRoger(mixed, system.weights);
  return {
    differences: system.compared.map((arm, i) => ({
      arm: system.arms[arm] as string,
      ...(contrasts[i] as (typeof contrasts)[number]),
    })),
    covariance,
    variance: mixed.rowVariance,
    df: rowDf,
    riderSd: Math.sqrt(mixed.cellVariance),
  };
}
