import { choleskyInPlace, invertInto } from '../numerics/cholesky.js';
import type { BoundFactors } from './bound-factor.js';
import { unknownsOf, type DemandDesign, type ExactSums } from './design.js';

/** Standard deviations of the random parts, log metres, ≥ 0. */
export interface DemandSds {
  track: number;
  rider: number;
  run: number;
}

/**
 * Gaussian system over mu, track effects and rider effects, built from one precision and one shift a cell
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

  constructor(
    private readonly design: DemandDesign,
    sds: DemandSds,
    muSd: number,
  ) {
    this.size = unknownsOf(design);
    this.scale = new Float64Array(this.size).fill(sds.rider);
    this.scale.fill(sds.track, 1, 1 + design.tracks.length);
    this.scale[0] = muSd;
    this.matrix = new Float64Array(this.size * this.size);
    this.inverse = new Float64Array(this.size * this.size);
    this.columns = new Float64Array(this.size * this.size);
    this.solution = new Float64Array(this.size);
  }

  /** Solves for the current factors; false when rounding has spoilt the matrix. */
  solve(sums: ExactSums, factors: BoundFactors): boolean {
    const n = this.size;
    const right = this.assemble(sums, factors);
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

  private assemble(sums: ExactSums, factors: BoundFactors): Float64Array {
    const n = this.size;
    const precision = sums.precision.slice();
    const shift = sums.shift.slice();
    const { cell } = this.design.bounds;
    for (let j = 0; j < cell.length; j += 1) {
      const c = cell[j] as number;
      precision[c] = (precision[c] as number) + (factors.precision[j] as number);
      shift[c] = (shift[c] as number) + (factors.shift[j] as number);
    }
    const { matrix, scale } = this;
    const right = new Float64Array(n);
    matrix.fill(0);
    for (let i = 0; i < n; i += 1) matrix[i * n + i] = 1;
    for (let c = 0; c < precision.length; c += 1) {
      const weight = precision[c] as number;
      const track = this.trackUnknown(c);
      const rider = this.riderUnknown(c);
      const s = scale[0] as number;
      const st = scale[track] as number;
      const sr = scale[rider] as number;
      const add = (at: number, value: number): void => {
        matrix[at] = (matrix[at] as number) + value;
      };
      add(0, s * s * weight);
      add(track * n, st * s * weight);
      add(track * n + track, st * st * weight);
      add(rider * n, sr * s * weight);
      add(rider * n + track, sr * st * weight);
      add(rider * n + rider, sr * sr * weight);
      right[0] = (right[0] as number) + s * (shift[c] as number);
      right[track] = (right[track] as number) + st * (shift[c] as number);
      right[rider] = (right[rider] as number) + sr * (shift[c] as number);
    }
    return right;
  }

  private trackUnknown(cell: number): number {
    return 1 + (this.design.cellTrack[cell] as number);
  }

  private riderUnknown(cell: number): number {
    return 1 + this.design.tracks.length + (this.design.cellRider[cell] as number);
  }

  /** Mean (from the prior mean of mu) and variance of a cell's level. */
  marginal(cell: number): { mean: number; variance: number } {
    const { inverse, solution, scale, size } = this;
    const t = this.trackUnknown(cell);
    const r = this.riderUnknown(cell);
    const s = scale[0] as number;
    const st = scale[t] as number;
    const sr = scale[r] as number;
    const mean = s * (solution[0] as number) + st * (solution[t] as number) + sr * (solution[r] as number);
    const squares =
      s * s * (inverse[0] as number) +
      st * st * (inverse[t * size + t] as number) +
      sr * sr * (inverse[r * size + r] as number);
    const products =
      s * st * (inverse[t] as number) +
      s * sr * (inverse[r] as number) +
      st * sr * (inverse[t * size + r] as number);
    return { mean, variance: squares + 2 * products };
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
