import { contrast, leastSquares } from '../linear/least-squares.js';
import { armsDepend, differenceWeights, runDesign, type OrderTrend } from '../linear/run-design.js';
import type { ComparisonRun } from './comparison-request.js';

/** A timed, counted run with its place in the model. */
export interface TimedRun extends ComparisonRun {
  time: number;
}

/** Difference of one arm to the current one on the log scale, before any variance is put to it. */
export interface ArmDifference {
  arm: string;
  estimate: number;
  /** Variance in units of the variance of one run. */
  unscaledVariance: number;
}

/** Fit of log time to arms, blocks and trend. */
export interface TimeModel {
  /** 'runs': every run is a row. 'rider means': one mean a rider and arm, so that the answer is for riders in general. */
  unit: 'runs' | 'rider means';
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

/**
 * Ordinary least squares of log time: arms against the current one + order trend + a level for each rider and session;
 * differences on the log scale. Null where the current arm has no timed run, or the arms depend on each other.
 */
export function fitRuns(runs: readonly TimedRun[], current: string, trend: OrderTrend): TimeModel | null {
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
  const weights = compared.map((arm) => differenceWeights(design, arm, 0));
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
    unit: 'runs',
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

/** Riders from which a mean over riders has a scatter of its own worth using (judgement). */
const FEWEST_RIDERS = 3;

/**
 * Two-way fit of the mean log times of each rider on each arm, trend taken out first: the residual is how riders differ
 * in what suits them, so the answer holds for riders in general, on (riders − 1)(arms − 1) degrees of freedom.
 *
 * Null unless at least three riders rode every arm equally often. Equal to a mixed model with random riders and
 * rider-by-arm parts for such plans (kenward1997 would give the same degrees of freedom).
 */
export function fitRiderMeans(
  runs: readonly TimedRun[],
  current: string,
  trend: OrderTrend,
): TimeModel | null {
  const riders = [...new Set(runs.map((run) => run.rider))].sort();
  const arms = [...new Set(runs.map((run) => run.arm))];
  if (riders.length < FEWEST_RIDERS || arms.length < 2) return null;
  const cells = riders.flatMap((rider) =>
    arms.map((arm) => ({ rider, arm, runs: runs.filter((run) => run.rider === rider && run.arm === arm) })),
  );
  const each = cells[0]?.runs.length ?? 0;
  if (each === 0 || cells.some((cell) => cell.runs.length !== each)) return null;
  const within = fitRuns(runs, current, trend);
  if (within === null) return null;
  const adjusted = new Map(runs.map((run, i) => [run, within.points[i]?.adjusted ?? 0]));
  const means = cells.map((cell): TimedRun => ({
    arm: cell.arm,
    rider: cell.rider,
    session: '',
    position: 1,
    voided: false,
    // Levels of the riders are taken out already; any other would do as well.
    time: Math.exp(meanOf(cell.runs.map((run) => adjusted.get(run) ?? 0))),
  }));
  const between = fitRuns(means, current, 'none');
  if (between === null) return null;
  return {
    ...between,
    unit: 'rider means',
    trendOverSession: within.trendOverSession,
    points: within.points,
  };
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
