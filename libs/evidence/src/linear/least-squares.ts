import { EvidenceInputError } from '../errors.js';

/** Result of an ordinary least-squares fit. */
export interface LeastSquares {
  /** One a column; 0 for a column that is aliased. */
  coefficients: number[];
  /** Columns (by index) that are linear combinations of earlier ones: not estimable. */
  aliased: number[];
  rank: number;
  residualDf: number;
  residualSumOfSquares: number;
  /** (XᵀX)⁻¹ over all columns, with zeros in the rows and columns of aliased ones. */
  inverse: number[][];
  residuals: number[];
}

/** A column is aliased when what is left of it beside the earlier ones is below this share of its length (as in R's lm). */
const ALIAS_TOLERANCE = 1e-7;

/**
 * Ordinary least squares by Householder reflections; coefficients in the unit of y per unit of the column.
 *
 * min |y − Xβ|² with X = QR (golub1965); columns are scaled to length 1 first and reflected in their order, so a
 * column that depends on earlier ones is found and named. Rows of `x` are observations. At least one row; all rows
 * equally long. Throws EvidenceInputError for values that are not finite.
 */
export function leastSquares(x: readonly (readonly number[])[], y: readonly number[]): LeastSquares {
  const n = x.length;
  const p = x[0]?.length ?? 0;
  requireTable(x, y, p);
  const columns = Array.from({ length: p }, (_, j) => Float64Array.from(x, (row) => row[j] as number));
  const lengths = columns.map(lengthOf);
  for (const [j, column] of columns.entries()) {
    const length = lengths[j] as number;
    if (length > 0) for (let i = 0; i < n; i += 1) column[i] = (column[i] as number) / length;
  }
  const right = Float64Array.from(y);
  const kept: number[] = [];
  const aliased: number[] = [];
  for (const [j, column] of columns.entries()) {
    const k = kept.length;
    const rest = k < n ? lengthOf(column.subarray(k)) : 0;
    if (rest < ALIAS_TOLERANCE) {
      aliased.push(j);
      continue;
    }
    kept.push(j);
    const reflector = column.slice();
    reflector.fill(0, 0, k);
    const diagonal = (column[k] as number) > 0 ? -rest : rest;
    reflector[k] = (column[k] as number) - diagonal;
    for (const other of columns.slice(j)) reflect(other, reflector);
    reflect(right, reflector);
  }
  const rank = kept.length;
  const r = (i: number, j: number): number => (columns[kept[j] as number] as Float64Array)[i] as number;
  const inverseR = inverseOfTriangle(r, rank);
  const coefficients = new Array<number>(p).fill(0);
  const inverse = Array.from({ length: p }, () => new Array<number>(p).fill(0));
  for (let i = 0; i < rank; i += 1) {
    const ci = kept[i] as number;
    let sum = 0;
    for (let k = i; k < rank; k += 1) sum += (inverseR[i]?.[k] as number) * (right[k] as number);
    coefficients[ci] = sum / (lengths[ci] as number);
    for (let j = 0; j < rank; j += 1) {
      const cj = kept[j] as number;
      let product = 0;
      for (let k = Math.max(i, j); k < rank; k += 1)
        product += (inverseR[i]?.[k] as number) * (inverseR[j]?.[k] as number);
      (inverse[ci] as number[])[cj] = product / ((lengths[ci] as number) * (lengths[cj] as number));
    }
  }
  const residuals = y.map(
    (value, i) =>
      value - (x[i] as readonly number[]).reduce((s, a, j) => s + a * (coefficients[j] as number), 0),
  );
  const residualSumOfSquares = right.subarray(rank).reduce((sum, value) => sum + value * value, 0);
  return { coefficients, aliased, rank, residualDf: n - rank, residualSumOfSquares, inverse, residuals };
}

const lengthOf = (values: Float64Array): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));

/** Applies I − 2 v vᵀ/vᵀv to a vector. */
function reflect(vector: Float64Array, v: Float64Array): void {
  let product = 0;
  let square = 0;
  for (let i = 0; i < v.length; i += 1) {
    product += (v[i] as number) * (vector[i] as number);
    square += (v[i] as number) ** 2;
  }
  const factor = (2 * product) / square;
  for (let i = 0; i < v.length; i += 1) vector[i] = (vector[i] as number) - factor * (v[i] as number);
}

function inverseOfTriangle(r: (i: number, j: number) => number, n: number): number[][] {
  const inverse = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let j = 0; j < n; j += 1) {
    (inverse[j] as number[])[j] = 1 / r(j, j);
    for (let i = j - 1; i >= 0; i -= 1) {
      let sum = 0;
      for (let k = i + 1; k <= j; k += 1) sum -= r(i, k) * (inverse[k]?.[j] as number);
      (inverse[i] as number[])[j] = sum / r(i, i);
    }
  }
  return inverse;
}

function requireTable(x: readonly (readonly number[])[], y: readonly number[], p: number): void {
  if (x.length === 0 || x.length !== y.length) {
    throw new EvidenceInputError('x', x.length, 'rows', `as many as y has (${y.length}), at least 1`);
  }
  for (const [i, row] of x.entries()) {
    if (row.length !== p) throw new EvidenceInputError(`x[${i}]`, row.length, 'columns', `${p}`);
    const bad = row.find((value) => !Number.isFinite(value)) ?? (Number.isFinite(y[i]) ? undefined : y[i]);
    if (bad !== undefined) throw new EvidenceInputError(`row ${i}`, bad, 'number', 'finite numbers');
  }
}

/** Estimate and unscaled variance (to be multiplied by σ²) of a contrast Σ weights·coefficients. */
export function contrast(
  fit: LeastSquares,
  weights: readonly number[],
): { estimate: number; unscaledVariance: number } {
  let estimate = 0;
  let unscaledVariance = 0;
  for (const [i, wi] of weights.entries()) {
    if (wi === 0) continue;
    estimate += wi * (fit.coefficients[i] as number);
    for (const [j, wj] of weights.entries()) unscaledVariance += wi * wj * (fit.inverse[i]?.[j] as number);
  }
  return { estimate, unscaledVariance };
}
