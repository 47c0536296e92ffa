import { logBoundsOverFactors, MatchedFactor, type BoundFactors } from './bound-factor.js';
import type { BoundsAtRunSd } from './bounds-at-run-sd.js';
import type { CellSystem } from './cell-system.js';
import type { DemandDesign } from './design.js';

/** Expectation propagation over the bounds of a design, in working space of its own; equations D4 and D5. */
export class BoundPasses {
  /** The factors as they are now. */
  readonly factors: BoundFactors;
  private readonly target = new MatchedFactor();
  private bounds: BoundsAtRunSd | null = null;

  constructor(private readonly design: DemandDesign) {
    const count = design.bounds.cell.length;
    this.factors = { precision: new Float64Array(count), shift: new Float64Array(count) };
  }

  /** Sets the bounds that the next passes are over, and the factors they start from: none unless given. */
  begin(bounds: BoundsAtRunSd, start?: BoundFactors): void {
    this.bounds = bounds;
    const { precision, shift } = this.factors;
    if (start === undefined) {
      precision.fill(0);
      shift.fill(0);
    } else {
      precision.set(start.precision);
      shift.set(start.shift);
    }
  }

  /** The factors found, to keep. */
  found(): BoundFactors {
    return { precision: this.factors.precision.slice(), shift: this.factors.shift.slice() };
  }

  /**
   * Moves all factors by a share of the way to those that match, one after another within a cell, cells side by side.
   * Returns the greatest change of a cell: of its mean in its sd, or of its sd relative to it.
   */
  pass(system: CellSystem, share: number): number {
    const { boundedCells } = this.design;
    const { precision, shift } = this.factors;
    const { limit, variance: boundVariance, side } = this.bounds as BoundsAtRunSd;
    const { target } = this;
    let most = 0;
    for (let k = 0; k < boundedCells.length; k += 1) {
      const { first, last } = boundedCells[k] as DemandDesign['boundedCells'][number];
      const mean = system.boundedMean[k] as number;
      const variance = system.boundedVariance[k] as number;
      let precisionNow = 1 / variance;
      let shiftNow = mean / variance;
      for (let j = first; j < last; j += 1) {
        const oldPrecision = precision[j] as number;
        const oldShift = shift[j] as number;
        const restPrecision = precisionNow - oldPrecision;
        if (!(restPrecision > 0)) continue;
        target.match(
          side[j] as number,
          limit[j] as number,
          boundVariance[j] as number,
          restPrecision,
          shiftNow - oldShift,
        );
        const stepPrecision = share * (target.precision - oldPrecision);
        const stepShift = share * (target.shift - oldShift);
        precision[j] = oldPrecision + stepPrecision;
        shift[j] = oldShift + stepShift;
        precisionNow += stepPrecision;
        shiftNow += stepShift;
      }
      const meanChange = Math.abs(shiftNow / precisionNow - mean) / Math.sqrt(variance);
      const sdChange = 0.5 * Math.abs(precisionNow * variance - 1);
      if (meanChange > most) most = meanChange;
      if (sdChange > most) most = sdChange;
    }
    return most;
  }

  /** What the bounds add to the evidence beyond their Gaussian factors, dimensionless. */
  logCorrection(system: CellSystem): number {
    const { boundedCells } = this.design;
    let sum = 0;
    for (const [k, cell] of boundedCells.entries()) {
      const mean = system.boundedMean[k] as number;
      const variance = system.boundedVariance[k] as number;
      sum += logBoundsOverFactors(this.bounds as BoundsAtRunSd, this.factors, cell, mean, variance);
    }
    return sum;
  }
}
