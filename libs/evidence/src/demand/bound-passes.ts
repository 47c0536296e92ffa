import { FixedPoint } from '../numerics/fixed-point.js';
import { logBoundsOverFactors, moveFactors, type BoundFactors } from './bound-factor.js';
import type { BoundsAtRunSd } from './bounds-at-run-sd.js';
import type { CellSystem } from './cell-system.js';
import type { BoundedCell, DemandDesign } from './design.js';

/** Passes that mix earlier ones in, at full steps; hardly any bounds need more. */
const MIXED_PASSES = 12;
/**
 * Share of each proposed change that is taken from then on. Full steps overshoot where many bounds share a track:
 * whenever a pass does not bring the change down to SLOW of the one before, the share is cut.
 */
const FIRST_SHARE = 0.9;
const SLOW = 0.95;
const SHARE_CUT = 0.7;
const LEAST_SHARE = 0.1;

/** Expectation propagation over the bounds of a design, in working space of its own; equations D4 and D5. */
export class BoundPasses {
  /** The factors as they are now. */
  readonly factors: BoundFactors;
  /** Precisions and shifts, one after the other: what `factors` looks at. */
  private readonly state: Float64Array;
  private readonly before: Float64Array;
  private readonly weights: Float64Array;
  private readonly iteration: FixedPoint;
  /** What the mixed pass of the least change started from, and that change. */
  private readonly best: Float64Array;
  private least = Number.POSITIVE_INFINITY;
  private bounds: BoundsAtRunSd | null = null;
  private passes = 0;
  private share = 1;
  private lastChange = Number.POSITIVE_INFINITY;

  constructor(private readonly design: DemandDesign) {
    const count = design.bounds.cell.length;
    this.state = new Float64Array(2 * count);
    this.before = new Float64Array(2 * count);
    this.best = new Float64Array(2 * count);
    this.weights = new Float64Array(2 * count);
    this.iteration = new FixedPoint(2 * count);
    this.factors = { precision: this.state.subarray(0, count), shift: this.state.subarray(count) };
  }

  /** Sets the bounds that the next passes are over, and the factors they start from: none unless given. */
  begin(bounds: BoundsAtRunSd, start?: BoundFactors): void {
    this.bounds = bounds;
    this.iteration.restart();
    this.least = Number.POSITIVE_INFINITY;
    this.passes = 0;
    this.share = 1;
    this.lastChange = Number.POSITIVE_INFINITY;
    this.state.fill(0);
    if (start === undefined) return;
    this.factors.precision.set(start.precision);
    this.factors.shift.set(start.shift);
  }

  /** The factors found, to keep. */
  found(): BoundFactors {
    return { precision: this.factors.precision.slice(), shift: this.factors.shift.slice() };
  }

  /**
   * Moves all factors towards those that match, one after another within a cell, cells side by side.
   * Returns how far the cell moves that moves farthest, as moveFactors.
   */
  pass(system: CellSystem): number {
    const { boundedCells } = this.design;
    const bounds = this.bounds as BoundsAtRunSd;
    let most = 0;
    this.before.set(this.state);
    for (let k = 0; k < boundedCells.length; k += 1) {
      const cell = boundedCells[k] as BoundedCell;
      const mean = system.boundedMean[k] as number;
      const variance = system.boundedVariance[k] as number;
      most = Math.max(most, moveFactors(bounds, this.factors, cell, mean, variance, this.share));
    }
    this.passes += 1;
    if (this.passes < MIXED_PASSES) this.mix(system, most);
    else if (this.passes === MIXED_PASSES) this.goBack();
    else this.damp(most);
    return most;
  }

  private mix(system: CellSystem, change: number): void {
    if (change < this.least) {
      this.least = change;
      this.best.set(this.before);
    }
    this.weigh(system);
    this.iteration.mix(this.before, this.state, this.weights);
    const { precision } = this.factors;
    // A bound's factor never has less than no precision.
    for (let j = 0; j < precision.length; j += 1) precision[j] = Math.max(0, precision[j] as number);
  }

  /** Mixing has not settled: plain steps go on from where the factors fitted best. */
  private goBack(): void {
    this.state.set(this.best);
    this.share = FIRST_SHARE;
  }

  private damp(change: number): void {
    if (change > SLOW * this.lastChange) this.share = Math.max(LEAST_SHARE, SHARE_CUT * this.share);
    this.lastChange = change;
  }

  /** Weighs precisions by the variance and shifts by the sd of their cells, so that both count as the cells move. */
  private weigh(system: CellSystem): void {
    const count = this.design.bounds.cell.length;
    for (const [k, { first, last }] of this.design.boundedCells.entries()) {
      const variance = system.boundedVariance[k] as number;
      this.weights.fill(variance, first, last);
      this.weights.fill(Math.sqrt(variance), count + first, count + last);
    }
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
