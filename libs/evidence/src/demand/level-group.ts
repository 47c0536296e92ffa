import { choleskyInPlace, inverseFromCholesky } from '../numerics/cholesky.js';
import { product } from '../numerics/matrix.js';
import type { ConditionalPosterior } from './conditional-posterior.js';
import type { BoundedCell, DemandDesign } from './design.js';
import { levelOfCell, type LevelForm } from './pair-effects.js';

/** Joint normal of a track's level mu + track (first) and the levels of its bounded cells, with the cells' factors added up. */
export interface LevelGroup {
  size: number;
  /** Log metres, counted from the prior mean of mu. */
  mean: Float64Array;
  /** Row-major, (log m)². */
  covariance: Float64Array;
  precision: Float64Array;
  shift: Float64Array;
}

/** A group with its factors taken out. */
export interface FreedGroup {
  mean: Float64Array;
  covariance: Float64Array;
  /** log of the integral of the factors against it. */
  logIntegral: number;
}

/** mu + track, as a linear form in the unknowns. */
const levelOfTrack = (track: number): LevelForm => ({
  unknowns: [0, 1 + track],
  factors: [1, 1],
  offset: 0,
  variance: 0,
});

/** Σ factors·values over the unknowns of a form; `values` has one value an unknown, from a place on. */
function sumOver({ unknowns, factors }: LevelForm, values: Float64Array, from: number): number {
  let sum = 0;
  for (let k = 0; k < unknowns.length; k += 1) {
    sum += (factors[k] as number) * (values[from + (unknowns[k] as number)] as number);
  }
  return sum;
}

/** Level of a track and of its bounded cells; `centre` is the prior mean of mu. */
export function levelAndCells(
  design: DemandDesign,
  { mean, covariance, effects, factors }: ConditionalPosterior,
  centre: number,
  track: number,
  cells: readonly BoundedCell[],
): LevelGroup {
  const n = mean.length;
  const size = cells.length + 1;
  const forms = [levelOfTrack(track), ...cells.map(({ cell }) => levelOfCell(design, effects, cell))];
  const pairs = [-1, ...cells.map(({ cell }) => design.cellPair[cell] as number)];
  const group: LevelGroup = {
    size,
    mean: new Float64Array(size),
    covariance: new Float64Array(size * size),
    precision: new Float64Array(size),
    shift: new Float64Array(size),
  };
  const withUnknowns = new Float64Array(n);
  for (let i = 0; i < size; i += 1) {
    const row = forms[i] as LevelForm;
    group.mean[i] = row.offset + sumOver(row, mean, 0) - centre;
    for (let a = 0; a < n; a += 1) withUnknowns[a] = sumOver(row, covariance, a * n);
    for (let j = 0; j < size; j += 1) {
      // Cells of one pair, on different ground, share what is left open of its effect.
      const shared = pairs[i] === pairs[j] ? row.variance : 0;
      group.covariance[i * size + j] = shared + sumOver(forms[j] as LevelForm, withUnknowns, 0);
    }
  }
  for (let i = 1; i < size; i += 1) {
    const { first, last } = cells[i - 1] as BoundedCell;
    for (let j = first; j < last; j += 1) {
      group.precision[i] = (group.precision[i] as number) + (factors.precision[j] as number);
      group.shift[i] = (group.shift[i] as number) + (factors.shift[j] as number);
    }
  }
  return group;
}

/**
 * The group without its factors (equation D9):
 * V₀ = V + V T^½ (I − T^½ V T^½)⁻¹ T^½ V,  m₀ = m − V₀ (shift − T m),  T = diag(precision).
 */
export function withoutFactors({ size, mean, covariance, precision, shift }: LevelGroup): FreedGroup {
  const root = precision.map(Math.sqrt);
  const inner = new Float64Array(size * size);
  /** T^½ V. */
  const scaled = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < size; j += 1) {
      const value = (root[i] as number) * (covariance[i * size + j] as number);
      scaled[i * size + j] = value;
      inner[i * size + j] = Number(i === j) - value * (root[j] as number);
    }
  }
  const logDeterminant = choleskyInPlace(inner, size);
  const right = product(inverseFromCholesky(inner, size), scaled, size);
  const free = product(transposed(scaled, size), right, size);
  for (let at = 0; at < free.length; at += 1) {
    free[at] = (free[at] as number) + (covariance[at] as number);
  }
  const freeMean = mean.slice();
  let form = 0;
  for (let j = 0; j < size; j += 1) {
    const m = mean[j] as number;
    const pull = (shift[j] as number) - (precision[j] as number) * m;
    form += (shift[j] as number) * m + pull * m;
    for (let i = 0; i < size; i += 1) {
      freeMean[i] = (freeMean[i] as number) - (free[i * size + j] as number) * pull;
    }
  }
  for (let i = 0; i < size; i += 1) {
    const pull = (shift[i] as number) - (precision[i] as number) * (mean[i] as number);
    form -= pull * ((mean[i] as number) - (freeMean[i] as number));
  }
  return { mean: freeMean, covariance: free, logIntegral: 0.5 * (form + logDeterminant) };
}

function transposed(matrix: Float64Array, size: number): Float64Array {
  const result = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < size; j += 1) result[j * size + i] = matrix[i * size + j] as number;
  }
  return result;
}
