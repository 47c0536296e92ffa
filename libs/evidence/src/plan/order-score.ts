import { EvidenceInputError } from '../errors.js';
import { contrast, leastSquares } from '../linear/least-squares.js';

/** Trend over the session that a comparison takes out. */
export type OrderTrend = 'none' | 'linear' | 'quadratic';

/** How well an order of runs tells set-ups apart when a trend over the session is taken out. */
export interface OrderScore {
  /** Runs minus estimated terms. */
  residualDf: number;
  /** Variance of the difference of each pair of arms over that without a trend; null when it cannot be estimated. */
  pairs: { first: number; second: number; inflation: number | null; unscaledVariance: number | null }[];
  /** Largest and mean inflation over the pairs; null when some pair cannot be estimated. */
  maxInflation: number | null;
  meanInflation: number | null;
  /** Mean over the pairs of the variance of their difference, in units of the variance of one run. */
  meanVariance: number | null;
}

/** Columns of the trend for positions counted from 1, centred on the middle of the session, scaled to about ±1. */
export function trendColumns(positions: readonly number[], trend: OrderTrend): number[][] {
  if (trend === 'none') return positions.map(() => []);
  const centre = (Math.min(...positions) + Math.max(...positions)) / 2;
  const half = Math.max(1, Math.max(...positions) - centre);
  return positions.map((position) => {
    const o = (position - centre) / half;
    return trend === 'linear' ? [o] : [o, o * o];
  });
}

/**
 * Precision of an order of runs, as variance ratios (dimensionless): inflation = Var(difference | trend)/(σ²(1/nᵢ + 1/nⱼ)).
 *
 * `arms` holds arm numbers 0, 1, … in the order ridden, `positions` their places in the session (1, 2, … when left
 * out; a void run keeps its place and is left out of both). AABB costs 5, ABAB 1.25, ABBA 1 (cox1951, daniel1966).
 * Throws EvidenceInputError for arm numbers that are not 0, 1, ….
 */
export function scoreOrder(
  arms: readonly number[],
  trend: OrderTrend,
  positions: readonly number[] = arms.map((_, i) => i + 1),
): OrderScore {
  const k = Math.max(-1, ...arms) + 1;
  if (arms.some((arm) => !Number.isInteger(arm) || arm < 0)) {
    throw new EvidenceInputError('arms', arms.join(), 'arm numbers', 'integers from 0');
  }
  if (arms.length === 0) return noScore(0);
  const trends = trendColumns(positions, trend);
  const x = arms.map((arm, i) => [
    ...Array.from({ length: k }, (_, j) => Number(arm === j)),
    ...(trends[i] ?? []),
  ]);
  const fit = leastSquares(
    x,
    arms.map(() => 0),
  );
  const runs = Array.from({ length: k }, (_, j) => arms.filter((arm) => arm === j).length);
  // With a trend that the arms explain, no difference between arms can be told from the trend.
  const confounded = fit.aliased.length > 0;
  const pairs = [];
  for (let first = 0; first < k; first += 1) {
    for (let second = first + 1; second < k; second += 1) {
      const weights = x[0]?.map((_, j) => Number(j === second) - Number(j === first)) ?? [];
      const ideal = 1 / (runs[first] as number) + 1 / (runs[second] as number);
      const variance = confounded ? null : contrast(fit, weights).unscaledVariance;
      pairs.push({
        first,
        second,
        inflation: variance === null ? null : variance / ideal,
        unscaledVariance: variance,
      });
    }
  }
  const inflations = pairs.flatMap((pair) => (pair.inflation === null ? [] : [pair.inflation]));
  if (confounded || inflations.length === 0) return { ...noScore(fit.residualDf), pairs };
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    residualDf: fit.residualDf,
    pairs,
    maxInflation: Math.max(...inflations),
    meanInflation: mean(inflations),
    meanVariance: mean(pairs.map((pair) => pair.unscaledVariance ?? 0)),
  };
}

const noScore = (residualDf: number): OrderScore => ({
  residualDf,
  pairs: [],
  maxInflation: null,
  meanInflation: null,
  meanVariance: null,
});
