import { entry } from './entry.js';

/**
 * Inverse of a symmetric positive definite matrix by Cholesky factors, or undefined where it is not definite
 * (relative to its diagonal, so that units of the rows do not matter).
 */
export function invertDefinite(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const n = matrix.length;
  const scale = matrix.map((row, i) => 1 / Math.sqrt(entry(row, i)));
  if (!scale.every((s) => Number.isFinite(s) && s > 0)) return undefined;
  const lower: number[][] = [];
  for (let i = 0; i < n; i++) {
    const row: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = j === i ? row : entry(lower, j);
      let rest = entry(entry(matrix, i), j) * entry(scale, i) * entry(scale, j);
      for (let k = 0; k < j; k++) rest -= entry(row, k) * entry(other, k);
      if (j < i) row.push(rest / entry(other, j));
      else if (rest > SINGULAR) row.push(Math.sqrt(rest));
      else return undefined;
    }
    lower.push(row);
  }
  const columns = scale.map((_, column) => solve(lower, column));
  return columns.map((column, i) => column.map((value, j) => value * entry(scale, i) * entry(scale, j)));
}

/** A pivot below this part of its diagonal entry is rounding: the rows are dependent. */
const SINGULAR = 1e-13;

/** Column `column` of (L·Lᵀ)⁻¹. */
function solve(lower: readonly (readonly number[])[], column: number): number[] {
  const n = lower.length;
  const x: number[] = Array.from({ length: n }, (_, i) => (i === column ? 1 : 0));
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = entry(x, i) - entry(entry(lower, i), k) * entry(x, k);
    x[i] = entry(x, i) / entry(entry(lower, i), i);
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = entry(x, i) - entry(entry(lower, k), i) * entry(x, k);
    x[i] = entry(x, i) / entry(entry(lower, i), i);
  }
  return x;
}
