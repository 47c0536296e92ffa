import { choleskyInPlace, invertInto } from '../numerics/cholesky.js';
import type { BoundFactors } from './bound-factor.js';
import { unknownsOf, type DemandDesign, type ExactSums } from './design.js';
import type { PairEffects } from './pair-effects.js';
import { CONDITION_SD } from './reading.js';

/** Standard deviations of the random parts, log metres, ≥ 0. */
export interface DemandSds {
  track: number;
  rider: number;
  riderOnTrack: number;
  run: number;
}

/** Of one cell: mu, its track, its rider and its condition. */
const MOST_UNKNOWNS = 4;

/**
 * Gaussian system over mu, track, rider and condition effects, built from one precision and one shift a cell
 * (equation D3). The unknowns are scaled by their prior sd, so its matrix is never nearer to singular than 1 and
 * sds of exactly 0 need no special case. The effects of riders on single tracks are integrated out pair by pair.
 */
export class CellSystem {
  /** log ∫ prior × factors, up to the constant of the exact readings. */
  logIntegral = 0;
  /** Mean (from the prior mean of mu) and variance of the level of each bounded cell, the effect of its pair included. */
  readonly boundedMean: Float64Array;
  readonly boundedVariance: Float64Array;
  private readonly size: number;
  private readonly scale: Float64Array;
  private readonly inverse: Float64Array;
  private readonly columns: Float64Array;
  private readonly solution: Float64Array;
  private readonly matrix: Float64Array;
  private readonly right: Float64Array;
  private readonly precision: Float64Array;
  private readonly shift: Float64Array;
  private readonly pairVariance: Float64Array;
  private readonly pairShift: Float64Array;
  private riderOnTrackVariance = 0;
  /** The first cell of each pair, and behind the last pair the number of cells. */
  private readonly pairFirst: Int32Array;
  /** The unknowns of every cell in MOST_UNKNOWNS places each, as many of them as there are. */
  private readonly unknowns: Int32Array;
  private readonly unknownCount: Int32Array;

  /** Working space for one design; nothing is allocated while a solution is sought. */
  constructor(
    private readonly design: DemandDesign,
    muSd: number,
  ) {
    this.size = unknownsOf(design);
    this.scale = new Float64Array(this.size).fill(CONDITION_SD);
    this.scale[0] = muSd;
    this.right = new Float64Array(this.size);
    const cells = design.cellTrack.length;
    this.precision = new Float64Array(cells);
    this.shift = new Float64Array(cells);
    this.pairVariance = new Float64Array(design.pairs.length);
    this.pairShift = new Float64Array(design.pairs.length);
    this.matrix = new Float64Array(this.size * this.size);
    this.inverse = new Float64Array(this.size * this.size);
    this.columns = new Float64Array(this.size * this.size);
    this.solution = new Float64Array(this.size);
    this.boundedMean = new Float64Array(design.boundedCells.length);
    this.boundedVariance = new Float64Array(design.boundedCells.length);
    this.pairFirst = Int32Array.from([...design.pairs.map(({ cells }) => cells[0] ?? 0), cells]);
    this.unknowns = new Int32Array(MOST_UNKNOWNS * cells);
    this.unknownCount = Int32Array.from(design.cellUnknowns, (unknowns) => unknowns.length);
    for (const [c, unknowns] of design.cellUnknowns.entries()) this.unknowns.set(unknowns, MOST_UNKNOWNS * c);
  }

  /** Sets the standard deviations that the next solutions are for. */
  use(sds: DemandSds): void {
    const firstRider = 1 + this.design.tracks.length;
    this.scale.fill(sds.track, 1, firstRider);
    this.scale.fill(sds.rider, firstRider, firstRider + this.design.riders.length);
    this.riderOnTrackVariance = sds.riderOnTrack ** 2;
  }

  /** Solves for the current factors; false when rounding has spoilt the matrix. */
  solve(sums: ExactSums, factors: BoundFactors): boolean {
    const n = this.size;
    this.addUp(sums, factors);
    const logPairs = this.assemble();
    const { right, inverse, solution } = this;
    const logDeterminant = choleskyInPlace(this.matrix, n);
    if (Number.isNaN(logDeterminant)) return false;
    invertInto(inverse, this.columns, this.matrix, n);
    let form = 0;
    for (let i = 0; i < n; i += 1) {
      let sum = 0;
      for (let j = 0; j < n; j += 1) sum += (inverse[i * n + j] as number) * (right[j] as number);
      solution[i] = sum;
      form += sum * (right[i] as number);
    }
    this.logIntegral = logPairs + 0.5 * (form - logDeterminant);
    this.readMarginals();
    return true;
  }

  /** Precision and shift of every cell, exact readings and factors together. */
  private addUp(sums: ExactSums, factors: BoundFactors): void {
    const { precision, shift } = this;
    precision.set(sums.precision);
    shift.set(sums.shift);
    const { cell } = this.design.bounds;
    for (let j = 0; j < cell.length; j += 1) {
      const c = cell[j] as number;
      precision[c] = (precision[c] as number) + (factors.precision[j] as number);
      shift[c] = (shift[c] as number) + (factors.shift[j] as number);
    }
  }

  /** Matrix and right-hand side with the pairs' effects integrated out; returns the log of what that leaves over. */
  private assemble(): number {
    const { matrix, right, size, precision, shift, pairFirst, riderOnTrackVariance } = this;
    right.fill(0);
    matrix.fill(0);
    for (let i = 0; i < size; i += 1) matrix[i * size + i] = 1;
    let logPairs = 0;
    for (let p = 0; p + 1 < pairFirst.length; p += 1) {
      const first = pairFirst[p] as number;
      const last = pairFirst[p + 1] as number;
      let pairPrecision = 0;
      let pairShift = 0;
      for (let c = first; c < last; c += 1) {
        pairPrecision += precision[c] as number;
        pairShift += shift[c] as number;
      }
      const left = 1 / (1 + pairPrecision * riderOnTrackVariance);
      const variance = riderOnTrackVariance * left;
      this.pairVariance[p] = variance;
      this.pairShift[p] = pairShift;
      logPairs += 0.5 * (variance * pairShift * pairShift + Math.log(left));
      for (let c = first; c < last; c += 1) {
        const own = precision[c] as number;
        // Equals own·(1 − variance·own), in a form that subtracts nothing.
        const weight = own * (left + variance * (pairPrecision - own));
        const cross = (shift[c] as number) * pairPrecision - own * pairShift;
        this.addCell(c, weight, (shift[c] as number) * left + variance * cross);
        for (let d = first; d < c; d += 1) {
          this.addProduct(c, d, -variance * own * (precision[d] as number));
        }
      }
    }
    return logPairs;
  }

  /** Adds weight·u uᵀ to the lower triangle and by·u to the right-hand side, u the scaled indicators of a cell's unknowns. */
  private addCell(cell: number, weight: number, by: number): void {
    const { matrix, right, scale, size, unknowns, unknownCount } = this;
    const first = cell * MOST_UNKNOWNS;
    const last = first + (unknownCount[cell] as number);
    for (let k = first; k < last; k += 1) {
      const i = unknowns[k] as number;
      const own = scale[i] as number;
      right[i] = (right[i] as number) + own * by;
      const row = i * size;
      const weighted = own * weight;
      // The unknowns of a cell ascend, so those up to k make the lower triangle.
      for (let l = first; l <= k; l += 1) {
        const j = unknowns[l] as number;
        matrix[row + j] = (matrix[row + j] as number) + weighted * (scale[j] as number);
      }
    }
  }

  /** Adds weight·(u_c u_dᵀ + u_d u_cᵀ) to the lower triangle, for two cells of one pair. */
  private addProduct(c: number, d: number, weight: number): void {
    const { matrix, scale, size } = this;
    const rows = this.design.cellUnknowns[c] as Int32Array;
    const columns = this.design.cellUnknowns[d] as Int32Array;
    for (let k = 0; k < rows.length; k += 1) {
      const i = rows[k] as number;
      const weighted = (scale[i] as number) * weight;
      for (let l = 0; l < columns.length; l += 1) {
        const j = columns[l] as number;
        const value = weighted * (scale[j] as number);
        if (i >= j) matrix[i * size + j] = (matrix[i * size + j] as number) + value;
        if (j >= i) matrix[j * size + i] = (matrix[j * size + i] as number) + value;
      }
    }
  }

  /** Mean (from the prior mean of mu) and variance of the level of each bounded cell, the effect of its pair included. */
  private readMarginals(): void {
    for (const [k, { cell }] of this.design.boundedCells.entries()) {
      const pair = this.design.cellPair[cell] as number;
      const pairVariance = this.pairVariance[pair] as number;
      const first = this.pairFirst[pair] as number;
      const last = this.pairFirst[pair + 1] as number;
      let mean = pairVariance * (this.pairShift[pair] as number);
      let variance = pairVariance;
      for (let c = first; c < last; c += 1) {
        const factor = Number(c === cell) - pairVariance * (this.precision[c] as number);
        mean += factor * this.meanOf(c);
        for (let d = first; d < last; d += 1) {
          const other = Number(d === cell) - pairVariance * (this.precision[d] as number);
          variance += factor * other * this.covarianceOf(c, d);
        }
      }
      this.boundedMean[k] = mean;
      this.boundedVariance[k] = variance;
    }
  }

  /** Mean of mu + track + rider + condition of a cell, from the prior mean of mu. */
  private meanOf(cell: number): number {
    const { scale, solution, unknowns, unknownCount } = this;
    const first = cell * MOST_UNKNOWNS;
    const last = first + (unknownCount[cell] as number);
    let mean = 0;
    for (let k = first; k < last; k += 1) {
      const i = unknowns[k] as number;
      mean += (scale[i] as number) * (solution[i] as number);
    }
    return mean;
  }

  /** Covariance of mu + track + rider + condition of two cells. */
  private covarianceOf(c: number, d: number): number {
    const { inverse, scale, size, unknowns, unknownCount } = this;
    const firstRow = c * MOST_UNKNOWNS;
    const lastRow = firstRow + (unknownCount[c] as number);
    const firstColumn = d * MOST_UNKNOWNS;
    const lastColumn = firstColumn + (unknownCount[d] as number);
    let covariance = 0;
    for (let k = firstRow; k < lastRow; k += 1) {
      const i = unknowns[k] as number;
      let row = 0;
      for (let l = firstColumn; l < lastColumn; l += 1) {
        const j = unknowns[l] as number;
        row += (scale[j] as number) * (inverse[i * size + j] as number);
      }
      covariance += (scale[i] as number) * row;
    }
    return covariance;
  }

  /** Means and covariance of the unknowns in log metres, mu counted from 0 again, and the effects of the pairs. */
  unscaled(centre: number): { mean: Float64Array; covariance: Float64Array; effects: PairEffects } {
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
    return { mean, covariance, effects: this.effects(centre) };
  }

  private effects(centre: number): PairEffects {
    const variance = this.pairVariance.slice();
    const offset = variance.map((value, p) => value * (this.pairShift[p] as number));
    const pull = this.precision.map((value, c) => {
      const pair = this.design.cellPair[c] as number;
      const by = value * (variance[pair] as number);
      offset[pair] = (offset[pair] as number) + by * centre;
      return by;
    });
    return { offset, variance, pull };
  }
}
