import { choleskyInPlace, invertInto } from '../numerics/cholesky.js';
import type { BoundFactors } from './bound-factor.js';
import { CellLevels } from './cell-levels.js';
import type { DemandDesign, ExactSums } from './design.js';
import type { PairEffects } from './pair-effects.js';
import { PairIntegrals } from './pair-integrals.js';

/** Standard deviations of the random parts, log metres, ≥ 0. */
export interface DemandSds {
  track: number;
  rider: number;
  riderOnTrack: number;
  run: number;
}

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
  private readonly levels: CellLevels;
  private readonly pairs: PairIntegrals;
  private readonly evidence: { precision: Float64Array; shift: Float64Array };
  private readonly matrix: Float64Array;
  private readonly right: Float64Array;
  private readonly inverse: Float64Array;
  private readonly columns: Float64Array;
  private readonly solution: Float64Array;

  /** Working space for one design; nothing is allocated while a solution is sought. */
  constructor(
    private readonly design: DemandDesign,
    muSd: number,
  ) {
    this.levels = new CellLevels(design, muSd);
    this.pairs = new PairIntegrals(design);
    const cells = design.cellTrack.length;
    this.evidence = { precision: new Float64Array(cells), shift: new Float64Array(cells) };
    const { size } = this.levels;
    this.matrix = new Float64Array(size * size);
    this.right = new Float64Array(size);
    this.inverse = new Float64Array(size * size);
    this.columns = new Float64Array(size * size);
    this.solution = new Float64Array(size);
    this.boundedMean = new Float64Array(design.boundedCells.length);
    this.boundedVariance = new Float64Array(design.boundedCells.length);
  }

  /** Sets the standard deviations that the next solutions are for. */
  use(sds: DemandSds): void {
    this.levels.use(sds);
    this.pairs.use(sds.riderOnTrack);
  }

  /** Solves for the current factors; false when rounding has spoilt the matrix. */
  solve(sums: ExactSums, factors: BoundFactors): boolean {
    const n = this.levels.size;
    const { matrix, right, inverse, solution } = this;
    this.addUp(sums, factors);
    right.fill(0);
    matrix.fill(0);
    for (let i = 0; i < n; i += 1) matrix[i * n + i] = 1;
    const logPairs = this.pairs.addTo(matrix, right, this.levels, this.evidence);
    const logDeterminant = choleskyInPlace(matrix, n);
    if (Number.isNaN(logDeterminant)) return false;
    invertInto(inverse, this.columns, matrix, n);
    let form = 0;
    for (let i = 0; i < n; i += 1) {
      let sum = 0;
      for (let j = 0; j < n; j += 1) sum += (inverse[i * n + j] as number) * (right[j] as number);
      solution[i] = sum;
      form += sum * (right[i] as number);
    }
    this.logIntegral = logPairs + 0.5 * (form - logDeterminant);
    this.pairs.readLevels(this.levels, { solution, inverse }, this.evidence, this);
    return true;
  }

  /** Precision and shift of every cell, exact readings and factors together. */
  private addUp(sums: ExactSums, factors: BoundFactors): void {
    const { precision, shift } = this.evidence;
    precision.set(sums.precision);
    shift.set(sums.shift);
    const { cell } = this.design.bounds;
    for (let j = 0; j < cell.length; j += 1) {
      const c = cell[j] as number;
      precision[c] = (precision[c] as number) + (factors.precision[j] as number);
      shift[c] = (shift[c] as number) + (factors.shift[j] as number);
    }
  }

  /** Means and covariance of the unknowns in log metres, mu counted from 0 again, and the effects of the pairs. */
  unscaled(centre: number): { mean: Float64Array; covariance: Float64Array; effects: PairEffects } {
    return {
      ...this.levels.unscaled(this.solution, this.inverse, centre),
      effects: this.pairs.effects(this.evidence, centre),
    };
  }
}
