import { choleskyInPlace, inverseFromCholesky } from '../numerics/cholesky.js';
import { form } from '../numerics/matrix.js';
import type { LeastSquares } from './least-squares.js';

/**
 * What a model y = X b + Z u + e needs of its data once the fixed part is taken out: u has one value a cell, and Z says
 * which cell a row is in. M is the projection that leaves the residuals of least squares on X.
 */
export interface CellSystem {
  /** Rows less fixed terms. */
  readonly df: number;
  readonly cells: number;
  /** S = Zᵀ M Z, cells × cells, row-major. */
  readonly s: Float64Array;
  /** Zᵀ M y. */
  readonly u: Float64Array;
  /** yᵀ M y, in the square of y's unit. */
  readonly residualSumOfSquares: number;
  /** Xᵀ Z, one row a column of X. */
  readonly xz: readonly Float64Array[];
}

/** The system of rows of a fit, with the number of the cell of each row, from 0. */
export function cellSystem(
  x: readonly (readonly number[])[],
  fit: LeastSquares,
  cell: readonly number[],
): CellSystem {
  const cells = Math.max(...cell) + 1;
  const width = x[0]?.length ?? 0;
  const xz = Array.from({ length: width }, () => new Float64Array(cells));
  const s = new Float64Array(cells * cells);
  const u = new Float64Array(cells);
  for (const [i, row] of x.entries()) {
    const c = cell[i] as number;
    s[c * cells + c] = (s[c * cells + c] as number) + 1;
    u[c] = (u[c] as number) + (fit.residuals[i] as number);
    for (let j = 0; j < width; j += 1) {
      const column = xz[j] as Float64Array;
      column[c] = (column[c] as number) + (row[j] as number);
    }
  }
  for (let j = 0; j < width; j += 1) {
    const weights = fit.inverse[j] as number[];
    const taken = throughCells(xz, weights, cells);
    const column = xz[j] as Float64Array;
    for (let a = 0; a < cells; a += 1) {
      const own = column[a] as number;
      if (own === 0) continue;
      for (let b = 0; b < cells; b += 1) {
        s[a * cells + b] = (s[a * cells + b] as number) - own * (taken[b] as number);
      }
    }
  }
  return {
    df: fit.residualDf,
    cells,
    s,
    u,
    residualSumOfSquares: fit.residualSumOfSquares,
    xz,
  };
}

/** Σ weights·rows of Xᵀ Z: what a combination of columns of X adds up to in each cell. */
export function throughCells(
  xz: readonly Float64Array[],
  weights: readonly number[],
  cells: number,
): Float64Array {
  const sum = new Float64Array(cells);
  for (const [j, weight] of weights.entries()) {
    if (weight === 0) continue;
    const column = xz[j] as Float64Array;
    for (let c = 0; c < cells; c += 1) sum[c] = (sum[c] as number) + weight * (column[c] as number);
  }
  return sum;
}

/** The system at one ratio of the variance of cells to that of rows. */
export interface AtRatio {
  /** E = (I + ratio·S)⁻¹, full. */
  readonly e: Float64Array;
  readonly logDeterminant: number;
  /** yᵀ P y times the variance of a row. */
  readonly squares: number;
}

/** Rest of the squares below which rounding of the differences behind it has taken over, relative. */
const ROUNDING = 1e-14;

export function atRatio(system: CellSystem, ratio: number): AtRatio {
  const { cells, s, u, residualSumOfSquares } = system;
  const l = new Float64Array(cells * cells);
  for (let i = 0; i < cells * cells; i += 1) l[i] = ratio * (s[i] as number);
  for (let i = 0; i < cells; i += 1) l[i * cells + i] = (l[i * cells + i] as number) + 1;
  const logDeterminant = choleskyInPlace(l, cells);
  const e = inverseFromCholesky(l, cells);
  const taken = ratio * form(e, u, u);
  return {
    e,
    logDeterminant,
    squares: Math.max(ROUNDING * residualSumOfSquares, residualSumOfSquares - taken),
  };
}
