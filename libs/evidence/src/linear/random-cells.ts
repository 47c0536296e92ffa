import { choleskyInPlace, inverseFromCholesky } from '../numerics/cholesky.js';
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

/** a ᵀ matrix b. */
export function form(matrix: Float64Array, a: Float64Array, b: Float64Array): number {
  const n = a.length;
  let sum = 0;
  for (let i = 0; i < n; i += 1) {
    const left = a[i] as number;
    if (left === 0) continue;
    let row = 0;
    for (let j = 0; j < n; j += 1) row += (matrix[i * n + j] as number) * (b[j] as number);
    sum += left * row;
  }
  return sum;
}

/** Product of two square matrices, row-major. */
export function product(a: Float64Array, b: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < n; k += 1) {
      const left = a[i * n + k] as number;
      if (left === 0) continue;
      for (let j = 0; j < n; j += 1) {
        out[i * n + j] = (out[i * n + j] as number) + left * (b[k * n + j] as number);
      }
    }
  }
  return out;
}

/** Matrix times vector. */
export function times(matrix: Float64Array, vector: Float64Array): Float64Array {
  const n = vector.length;
  return Float64Array.from({ length: n }, (_, i) => {
    let sum = 0;
    for (let j = 0; j < n; j += 1) sum += (matrix[i * n + j] as number) * (vector[j] as number);
    return sum;
  });
}
