import { EvidenceInputError } from '../errors.js';
import { contrast, leastSquares } from '../linear/least-squares.js';
import {
  armsDepend,
  differenceWeights,
  runDesign,
  type DesignRun,
  type OrderTrend,
} from '../linear/run-design.js';

/** How well an order of runs tells set-ups apart when blocks and a trend over the session are taken out. */
export interface OrderScore {
  /** Runs minus estimated terms. */
  residualDf: number;
  /** Variance of the difference of each pair of arms over that without trend and blocks; null: cannot be estimated. */
  pairs: { first: number; second: number; inflation: number | null; unscaledVariance: number | null }[];
  /** Largest and mean inflation over the pairs; null when some pair cannot be estimated. */
  maxInflation: number | null;
  meanInflation: number | null;
  /** Mean over the pairs of the variance of their difference, in units of the variance of one run. */
  meanVariance: number | null;
}

/**
 * Precision of planned or ridden runs, as variance ratios (dimensionless):
 * inflation = Var(difference | blocks, trend)/(σ²(1/nᵢ + 1/nⱼ)).
 *
 * Arms and blocks are numbered from 0. AABB costs 5, ABAB 1.25, ABBA 1 (cox1951, daniel1966). Throws
 * EvidenceInputError for numbers that are not whole.
 */
export function scoreRuns(runs: readonly DesignRun[], trend: OrderTrend): OrderScore {
  for (const [i, run] of runs.entries()) {
    if (!Number.isInteger(run.arm) || run.arm < 0) {
      throw new EvidenceInputError(`runs[${i}].arm`, run.arm, 'arm number', 'whole numbers from 0');
    }
  }
  if (runs.length === 0)
    return { residualDf: 0, pairs: [], maxInflation: null, meanInflation: null, meanVariance: null };
  const design = runDesign(runs, trend);
  const fit = leastSquares(
    design.x,
    runs.map(() => 0),
  );
  const k = Math.max(...runs.map((run) => run.arm)) + 1;
  const count = (arm: number): number => runs.filter((run) => run.arm === arm).length;
  const broken = armsDepend(design, fit);
  const estimable = (arm: number): boolean => !broken && count(arm) > 0 && !design.confounded.includes(arm);
  const pairs = [];
  for (let first = 0; first < k; first += 1) {
    for (let second = first + 1; second < k; second += 1) {
      const variance =
        estimable(first) && estimable(second)
          ? contrast(fit, differenceWeights(design, second, first)).unscaledVariance
          : null;
      const inflation = variance === null ? null : variance / (1 / count(first) + 1 / count(second));
      pairs.push({ first, second, inflation, unscaledVariance: variance });
    }
  }
  const inflations = pairs.flatMap((pair) => (pair.inflation === null ? [] : [pair.inflation]));
  const variances = pairs.flatMap((pair) => (pair.unscaledVariance === null ? [] : [pair.unscaledVariance]));
  const whole = inflations.length === pairs.length && pairs.length > 0;
  return {
    residualDf: fit.residualDf,
    pairs,
    maxInflation: whole ? Math.max(...inflations) : null,
    meanInflation: whole ? mean(inflations) : null,
    meanVariance: whole ? mean(variances) : null,
  };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Precision of one rider's order: arm numbers in the order ridden, with their places in the session (1, 2, … when
 * left out; a void run keeps its place and is left out of both).
 */
export const scoreOrder = (
  arms: readonly number[],
  trend: OrderTrend,
  positions: readonly number[] = arms.map((_, i) => i + 1),
): OrderScore =>
  scoreRuns(
    arms.map((arm, i) => ({ arm, block: 0, position: positions[i] as number })),
    trend,
  );
