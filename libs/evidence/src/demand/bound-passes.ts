import { FixedPoint } from '../numerics/fixed-point.js';
import { logBoundsOverFactors, moveFactors, precisionAtLeast0, type BoundFactors } from './bound-factor.js';
import type { BoundsAtRunSd } from './bounds-at-run-sd.js';
import type { CellSystem } from './cell-system.js';
import type { BoundedCell, DemandDesign } from './design.js';

/**
 * Change of a cell's mean (in its sd) and sd (relative) in one full pass below which the factors are settled: the next
 * pass would change about half as much. The evidence is stationary in the factors, so its error is of the order of the
 * square, 1e-6.
 */
export const SETTLED = 2e-3;

/** Passes at full steps, each but the last mixed with earlier ones; hardly any bounds need more. */
const QUICK_PASSES = 12;
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
  /** What the quick pass of the least change started from, and that change. */
  private readonly best: Float64Array;
  private least = Number.POSITIVE_INFINITY;
  private bounds: BoundsAtRunSd | null = null;
  private passes = 0;
  private share = FIRST_SHARE;
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
    this.share = FIRST_SHARE;
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
   * Returns how far a full pass moves the cell that moves farthest, as moveFactors. Where that is below SETTLED the
   * factors stay as they are, so that they and `system` are what has been found settled.
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
      most = Math.max(most, moveFactors(bounds, this.factors, cell, mean, variance));
    }
    this.passes += 1;
    if (most < SETTLED) this.state.set(this.before);
    else if (this.passes > QUICK_PASSES) this.damp(most);
    else this.quicken(system, most);
    return most;
  }

  private quicken(system: CellSystem, change: number): void {
    if (change < this.least) {
      this.least = change;
      this.best.set(this.before);
    }
    if (this.passes < QUICK_PASSES) this.mix(system);
    else this.goBack();
  }

  private mix(system: CellSystem): void {
    this.weigh(system);
    this.iteration.mix(this.before, this.state, this.weights);
    precisionAtLeast0(this.factors);
  }

  /** Mixing has not settled: plain steps go on from where the factors fitted best. */
  private goBack(): void {
    this.state.set(this.best);
  }

  private damp(change: number): void {
    if (change > SLOW * this.lastChange) this.share = Math.max(LEAST_SHARE, SHARE_CUT * this.share);
    this.lastChange = change;
    const { state, before, share } = this;
    for (let j = 0; j < state.length; j += 1) {
      state[j] = (before[j] as number) + share * ((state[j] as number) - (before[j] as number));
    }
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
