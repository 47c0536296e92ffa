import type { CellLevels } from './cell-levels.js';
import type { DemandDesign } from './design.js';
import type { PairEffects } from './pair-effects.js';

/** Precision and shift of every cell: what readings and factors say about its level, the effect of its pair included. */
export interface CellEvidence {
  precision: Float64Array;
  shift: Float64Array;
}

/** The effects of riders on single tracks, integrated out pair by pair (equation D3), and what of them is read back. */
export class PairIntegrals {
  /** Of each pair: variance of its effect given the levels of its cells, and the shifts of these together. */
  private readonly variance: Float64Array;
  private readonly shift: Float64Array;
  private priorVariance = 0;
  /** The first cell of each pair, and behind the last pair the number of cells. */
  private readonly firstCell: Int32Array;

  constructor(private readonly design: DemandDesign) {
    this.variance = new Float64Array(design.pairs.length);
    this.shift = new Float64Array(design.pairs.length);
    this.firstCell = Int32Array.from([
      ...design.pairs.map(({ cells }) => cells[0] ?? 0),
      design.cellTrack.length,
    ]);
  }

  /** Sets the standard deviation of the effects, log metres, ≥ 0. */
  use(riderOnTrackSd: number): void {
    this.priorVariance = riderOnTrackSd ** 2;
  }

  /** Adds what the cells say about the unknowns to a matrix and its right-hand side; returns the log of what that leaves over. */
  addTo(
    matrix: Float64Array,
    right: Float64Array,
    levels: CellLevels,
    { precision, shift }: CellEvidence,
  ): number {
    const { firstCell, priorVariance } = this;
    let logPairs = 0;
    for (let p = 0; p + 1 < firstCell.length; p += 1) {
      const first = firstCell[p] as number;
      const last = firstCell[p + 1] as number;
      let pairPrecision = 0;
      let pairShift = 0;
      for (let c = first; c < last; c += 1) {
        pairPrecision += precision[c] as number;
        pairShift += shift[c] as number;
      }
      const left = 1 / (1 + pairPrecision * priorVariance);
      const variance = priorVariance * left;
      this.variance[p] = variance;
      this.shift[p] = pairShift;
      logPairs += 0.5 * (variance * pairShift * pairShift + Math.log(left));
      for (let c = first; c < last; c += 1) {
        const own = precision[c] as number;
        // Equals own·(1 − variance·own), in a form that subtracts nothing.
        const weight = own * (left + variance * (pairPrecision - own));
        const cross = (shift[c] as number) * pairPrecision - own * pairShift;
        levels.addCell(matrix, right, c, weight, (shift[c] as number) * left + variance * cross);
        for (let d = first; d < c; d += 1) {
          levels.addProduct(matrix, c, d, -variance * own * (precision[d] as number));
        }
      }
    }
    return logPairs;
  }

  /** Mean (from the prior mean of mu) and variance of the level of each bounded cell, the effect of its pair included. */
  readLevels(
    levels: CellLevels,
    { solution, inverse }: { solution: Float64Array; inverse: Float64Array },
    { precision }: CellEvidence,
    to: { boundedMean: Float64Array; boundedVariance: Float64Array },
  ): void {
    for (const [k, { cell }] of this.design.boundedCells.entries()) {
      const pair = this.design.cellPair[cell] as number;
      const pairVariance = this.variance[pair] as number;
      const first = this.firstCell[pair] as number;
      const last = this.firstCell[pair + 1] as number;
      let mean = pairVariance * (this.shift[pair] as number);
      let variance = pairVariance;
      for (let c = first; c < last; c += 1) {
        const factor = Number(c === cell) - pairVariance * (precision[c] as number);
        mean += factor * levels.mean(solution, c);
        for (let d = first; d < last; d += 1) {
          const other = Number(d === cell) - pairVariance * (precision[d] as number);
          variance += factor * other * levels.covariance(inverse, c, d);
        }
      }
      to.boundedMean[k] = mean;
      to.boundedVariance[k] = variance;
    }
  }

  /** The effects by the levels, log metres; `centre` is the prior mean of mu, which shifts are counted from. */
  effects({ precision }: CellEvidence, centre: number): PairEffects {
    const variance = this.variance.slice();
    const offset = variance.map((value, p) => value * (this.shift[p] as number));
    const pull = precision.map((value, c) => {
      const pair = this.design.cellPair[c] as number;
      const by = value * (variance[pair] as number);
      offset[pair] = (offset[pair] as number) + by * centre;
      return by;
    });
    return { offset, variance, pull };
  }
}
