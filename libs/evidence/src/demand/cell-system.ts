import { choleskyInPlace, invertInto } from '../numerics/cholesky.js';
import type { BoundFactors } from './bound-factor.js';
import { unknownsOf, type DemandDesign, type ExactSums } from './design.js';
import { CONDITION_SD } from './reading.js';

/** Standard deviations of the random parts, log metres, ≥ 0. */
export interface DemandSds {
  track: number;
  rider: number;
  run: number;
}

/**
 * Gaussian system over mu, track, rider and condition effects, built from one precision and one shift a cell
 * (equation D3). The unknowns are scaled by their prior sd, so its matrix is never nearer to singular than 1 and
 * sds of exactly 0 need no special case.
 */
export class CellSystem {
  /** log ∫ prior × factors, up to the constant of the exact readings. */
  logIntegral = 0;
  private readonly size: number;
  private readonly scale: Float64Array;
  private readonly inverse: Float64Array;
  private readonly columns: Float64Array;
  private readonly solution: Float64Array;
  private readonly matrix: Float64Array;
  private readonly right: Float64Array;
  private readonly precision: Float64Array;
  private readonly shift: Float64Array;

  /** Working space for one design; nothing is allocated while a solution is sought. */
  constructor(
    private readonly design: DemandDesign,
    muSd: number,
  ) {
    this.size = unknownsOf(design);
    this.scale = new Float64Array(this.size).fill(CONDITION_SD);
    this.scale[0] = muSd;
    this.right = new Float64Array(this.size);
    this.precision = new Float64Array(design.cellTrack.length);
    this.shift = new Float64Array(design.cellTrack.length);
    this.matrix = new Float64Array(this.size * this.size);
    this.inverse = new Float64Array(this.size * this.size);
    this.columns = new Float64Array(this.size * this.size);
    this.solution = new Float64Array(this.size);
  }

  /** Sets the standard deviations that the next solutions are for. */
  use(sds: DemandSds): void {
    const firstRider = 1 + this.design.tracks.length;
    this.scale.fill(sds.track, 1, firstRider);
    this.scale.fill(sds.rider, firstRider, firstRider + this.design.riders.length);
  }

  /** Solves for the current factors; false when rounding has spoilt the matrix. */
  solve(sums: ExactSums, factors: BoundFactors): boolean {
    const n = this.size;
    this.assemble(sums, factors);
    const { right } = this;
    const logDeterminant = choleskyInPlace(this.matrix, n);
    if (Number.isNaN(logDeterminant)) return false;
    invertInto(this.inverse, this.columns, this.matrix, n);
    let form = 0;
    for (let i = 0; i < n; i += 1) {
      let sum = 0;
      for (let j = 0; j < n; j += 1) sum += (this.inverse[i * n + j] as number) * (right[j] as number);
      this.solution[i] = sum;
      form += sum * (right[i] as number);
    }
    this.logIntegral = 0.5 * (form - logDeterminant);
    return true;
  }

  private assemble(sums: ExactSums, factors: BoundFactors): void {
    const n = this.size;
    const { precision, shift, right } = this;
    precision.set(sums.precision);
    shift.set(sums.shift);
    const { cell } = this.design.bounds;
    for (let j = 0; j < cell.length; j += 1) {
      const c = cell[j] as number;
      precision[c] = (precision[c] as number) + (factors.precision[j] as number);
      shift[c] = (shift[c] as number) + (factors.shift[j] as number);
    }
    const { matrix, scale } = this;
    right.fill(0);
    matrix.fill(0);
    for (let i = 0; i < n; i += 1) matrix[i * n + i] = 1;
    for (let c = 0; c < precision.length; c += 1) {
      const weight = precision[c] as number;
      const unknowns = this.design.cellUnknowns[c] as Int32Array;
      for (let k = 0; k < unknowns.length; k += 1) {
        const i = unknowns[k] as number;
        const si = scale[i] as number;
        right[i] = (right[i] as number) + si * (shift[c] as number);
        // Unknowns ascend, so these are entries of the lower triangle.
        for (let l = 0; l <= k; l += 1) {
          const j = unknowns[l] as number;
          matrix[i * n + j] = (matrix[i * n + j] as number) + si * (scale[j] as number) * weight;
        }
      }
    }
  }

  /** Mean (from the prior mean of mu) and variance of a cell's level. */
  marginal(cell: number): { mean: number; variance: number } {
    const { inverse, solution, scale, size } = this;
    const unknowns = this.design.cellUnknowns[cell] as Int32Array;
    let mean = 0;
    let variance = 0;
    for (let k = 0; k < unknowns.length; k += 1) {
      const i = unknowns[k] as number;
      const si = scale[i] as number;
      mean += si * (solution[i] as number);
      variance += si * si * (inverse[i * size + i] as number);
      for (let l = 0; l < k; l += 1) {
        const j = unknowns[l] as number;
        variance += 2 * si * (scale[j] as number) * (inverse[i * size + j] as number);
      }
    }
    return { mean, variance };
  }

  /** Means and covariance of the unknowns in log metres, mu counted from 0 again. */
  unscaled(centre: number): { mean: Float64Array; covariance: Float64Array } {
    const { inverse, scale, size } = this;
    const mean = this.solution.map((value, i) => value * (scale[i] as number));
    mean[0] = (mean[0] ?? 0) + centre;
    const covariance = new Float64Array(size * size);
    for (let i = 0; i < size; i += 1) {
      const si = scale[i] as number;
      for (let j = 0; j < size; j += 1) {
        covariance[i * size + j] = si * (scale[j] as number) * (inverse[i * size + j] as number);
      }
    }
    return { mean, covariance };
  }
}
