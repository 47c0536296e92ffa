import type { LeastSquares } from './least-squares.js';
import { atRatio, cellSystem, type AtRatio, type CellSystem } from './random-cells.js';

/** Variances of y = X b + Z u + e with independent normal u (one a cell) and e (one a row), by restricted likelihood. */
export interface MixedModel {
  readonly fit: LeastSquares;
  readonly system: CellSystem;
  /** Variance of cells over that of rows; 0 where the likelihood is largest there. */
  readonly ratio: number;
  readonly at: AtRatio;
  /** In the square of y's unit. */
  readonly rowVariance: number;
  readonly cellVariance: number;
  /** −2 log restricted likelihood without log det XᵀX. */
  readonly criterion: number;
  /**
   * 'apart': both variances can be told. 'one': every cell is one row, so that rows and cells are one variance.
   */
  readonly variances: 'apart' | 'one';
}

/** Ratios tried: below the smallest a cell is nothing beside a row, above the largest a row is nothing beside a cell. */
const SMALLEST_RATIO = 1e-6;
const LARGEST_RATIO = 1e8;
/** Steps of the first search, in log ratio: finer than a restricted likelihood can have two tops. */
const GRID_STEP = 0.5;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Width in log ratio at which the search ends: standard deviations are then good to 1e-8. */
const SETTLED = 1e-8;
/** S below this, relative to the rows, is rounding: the fixed part leaves nothing of the cells. */
const NOTHING_LEFT = 1e-9;

/**
 * Fit by restricted maximum likelihood (patterson1971), both variances ≥ 0.
 *
 * The likelihood depends on the fixed part only through S = ZᵀMZ, Zᵀ M y and yᵀMy, so that one variance is solved for and
 * the ratio of the two is searched: grid, then golden section; 0 where that is no worse. Null where the fixed part
 * explains the cells or leaves no degrees of freedom: then nothing is known of how cells differ.
 */
export function fitMixed(
  x: readonly (readonly number[])[],
  fit: LeastSquares,
  cell: readonly number[],
): MixedModel | null {
  const system = cellSystem(x, fit, cell);
  const { df, cells, s } = system;
  let trace = 0;
  for (let i = 0; i < cells; i += 1) trace += s[i * cells + i] as number;
  if (df < 1 || trace < NOTHING_LEFT * x.length || !(system.residualSumOfSquares > 0)) return null;
  const criterion = ({ logDeterminant, squares }: AtRatio): number =>
    logDeterminant + df * (1 + Math.log((2 * Math.PI * squares) / df));
  const variances = oneVariance(system, trace) ? 'one' : 'apart';
  const ratio =
    variances === 'one'
      ? 0
      : bestRatio((log) => criterion(atRatio(system, log === null ? 0 : Math.exp(log))));
  const at = atRatio(system, ratio);
  const rowVariance = at.squares / df;
  return {
    fit,
    system,
    ratio,
    at,
    rowVariance,
    cellVariance: ratio * rowVariance,
    criterion: criterion(at),
    variances,
  };
}

/** Relative difference below which two sums over rows are one (rounding of sums over some hundred rows). */
const ONE = 1e-9;

/** Whether ZSZᵀ-scatter of cells has the shape of that of rows: S² = λS with as many dimensions as there are degrees of freedom. */
function oneVariance({ s, df }: CellSystem, trace: number): boolean {
  let squares = 0;
  for (const value of s) squares += value * value;
  // Σλ = trace, Σλ² = squares over at most df values above 0: equal ones, and df of them, only where (Σλ)² = df Σλ².
  return Math.abs(trace ** 2 / (df * squares) - 1) < ONE;
}

/** Ratio of the smallest criterion; null stands for the ratio 0. */
function bestRatio(criterion: (logRatio: number | null) => number): number {
  const least = Math.log(SMALLEST_RATIO);
  const most = Math.log(LARGEST_RATIO);
  let best = least;
  let lowest = criterion(least);
  for (let log = least + GRID_STEP; log <= most; log += GRID_STEP) {
    const value = criterion(log);
    if (value < lowest) [best, lowest] = [log, value];
  }
  let [low, high] = [best - GRID_STEP, best + GRID_STEP];
  let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atA, atB] = [criterion(a), criterion(b)];
  while (high - low > SETTLED) {
    if (atA <= atB) {
      [high, b, atB] = [b, a, atA];
      a = high - GOLDEN * (high - low);
      atA = criterion(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + GOLDEN * (high - low);
      atB = criterion(b);
    }
  }
  return criterion(null) <= Math.min(atA, atB) ? 0 : Math.exp((low + high) / 2);
}
