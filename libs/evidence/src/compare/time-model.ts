import { contrast, leastSquares, type LeastSquares } from '../linear/least-squares.js';
import {
  armsDepend,
  differenceWeights,
  runDesign,
  type OrderTrend,
  type RunDesign,
} from '../linear/run-design.js';
import type { ComparisonRun } from './comparison-request.js';

/** A timed, counted run with its place in the model. */
export interface TimedRun extends ComparisonRun {
  time: number;
}

/** Difference of one arm to the current one on the log scale, before any variance is put to it. */
interface ArmDifference {
  arm: string;
  estimate: number;
  /** Variance in units of the variance of one run. */
  unscaledVariance: number;
}

/** Fit of log time to arms, blocks and trend. */
export interface TimeModel {
  differences: ArmDifference[];
  /** Unscaled covariances of the differences. */
  covariance: number[][];
  /** Arms of which blocks and trend tell nothing apart. */
  confounded: string[];
  residualDf: number;
  /** Residual variance, (log time)²; 0 without degrees of freedom. */
  variance: number;
  /** Change of log time from the first to the last place, linear part; null without a trend. */
  trendOverSession: number | null;
  /** One a row of the model, in the order of the runs given: log time less blocks and trend, and what is left over. */
  points: {
    arm: string;
    rider: string;
    session: string;
    position: number;
    adjusted: number;
    residual: number;
  }[];
}

const blockOf = (run: ComparisonRun): string => `${run.rider}\u0000${run.session}`;

/** Log times as a linear model: what fits of the same runs share. */
export interface TimeSystem {
  /** The current arm first. */
  arms: readonly string[];
  design: RunDesign;
  fit: LeastSquares;
  /** Arms that a difference can be told of, by their numbers, and the weights of each difference. */
  compared: readonly number[];
  weights: readonly number[][];
}

/**
 * Log time = arm against the current one + order trend + a level for each rider and session, by least squares. Null where
 * the current arm has no timed run, or the arms depend on each other.
 */
export function timeSystem(runs: readonly TimedRun[], current: string, trend: OrderTrend): TimeSystem | null {
  const arms = [current, ...[...new Set(runs.map((run) => run.arm))].filter((arm) => arm !== current).sort()];
  const blocks = [...new Set(runs.map(blockOf))].sort();
  if (!runs.some((run) => run.arm === current)) return null;
  const rows = runs.map((run) => ({
    arm: arms.indexOf(run.arm),
    block: blocks.indexOf(blockOf(run)),
    position: run.position,
  }));
  const design = runDesign(rows, trend);
  const y = runs.map((run) => Math.log(run.time));
  const fit = leastSquares(design.x, y);
  if (armsDepend(design, fit)) return null;
  const compared = [...design.armColumn.keys()];
  return { arms, design, fit, compared, weights: compared.map((arm) => differenceWeights(design, arm, 0)) };
}

/**
 * Ordinary least squares of log time, differences on the log scale: the scatter is that between runs, so the answer is for
 * these riders only; fitRiders answers for riders in general. Null as timeSystem is.
 */
export function fitRuns(runs: readonly TimedRun[], current: string, trend: OrderTrend): TimeModel | null {
  const system = timeSystem(runs, current, trend);
  if (system === null) return null;
  const { arms, design, fit, compared, weights } = system;
  const armPart = (i: number): number =>
    [...design.armColumn.values()].reduce(
      (sum, column) => sum + (design.x[i]?.[column] as number) * (fit.coefficients[column] as number),
      0,
    );
  const linear = design.trendColumns[0];
  const spread = (): number => {
    const values = design.x.map((row) => row[linear as number] as number);
    return Math.max(...values) - Math.min(...values);
  };
  return {
    differences: compared.map((arm, i) => ({
      arm: arms[arm] as string,
      ...contrast(fit, weights[i] as number[]),
    })),
    covariance: weights.map((a) => weights.map((b) => crossVariance(fit.inverse, a, b))),
    confounded: design.confounded.map((arm) => arms[arm] as string),
    residualDf: fit.residualDf,
    variance: fit.residualDf > 0 ? fit.residualSumOfSquares / fit.residualDf : 0,
    trendOverSession: linear === undefined ? null : (fit.coefficients[linear] as number) * spread(),
    points: runs.map((run, i) => ({
      arm: run.arm,
      rider: run.rider,
      session: run.session,
      position: run.position,
      adjusted: armPart(i) + (fit.residuals[i] as number),
      residual: fit.residuals[i] as number,
    })),
  };
}

function crossVariance(inverse: readonly number[][], a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (const [i, wi] of a.entries()) {
    if (wi === 0) continue;
    for (const [j, wj] of b.entries()) sum += wi * wj * (inverse[i]?.[j] as number);
  }
  return sum;
}
