import {
  boundsOf,
  logBoundOverFactor,
  matchedFactor,
  type Bound,
  type BoundFactors,
} from './bound-factor.js';
import { CellSystem, type DemandSds } from './cell-system.js';
import { exactSums, type DemandDesign, type ExactSums } from './design.js';
import type { PairEffects } from './pair-effects.js';

/** Posterior of mu and all effects when the four standard deviations are given. */
export interface ConditionalPosterior {
  /** log p(readings | sds), mu and effects integrated out. */
  logEvidence: number;
  /** Means of mu, track effects, rider effects, log metres. */
  mean: Float64Array;
  /** Their covariance, row-major, (log m)². */
  covariance: Float64Array;
  /** Of riders on single tracks, given mu and the other effects. */
  effects: PairEffects;
  factors: BoundFactors;
  /** The bounds that the factors stand for. */
  bounds: readonly Bound[];
  iterations: number;
  status: 'converged' | 'not-converged' | 'not-positive-definite';
}

/** What the readings say when the run sd is given. */
export interface ReadingsAtRunSd {
  sums: ExactSums;
  bounds: readonly Bound[];
}

/** Exact readings summed up and bounds for a run sd (log m), counted from `centre` (log m). */
export const readingsAtRunSd = (design: DemandDesign, runSd: number, centre: number): ReadingsAtRunSd => ({
  sums: exactSums(design, runSd, centre),
  bounds: boundsOf(design, runSd, centre),
});

/** Passes over the bounds; 4 to 8 are usual, a cell of hundreds of equal bounds needs about 40. */
const MAX_PASSES = 200;
/**
 * Change of a cell's mean (in its sd) and sd (relative) at which the passes stop. The evidence is stationary in the
 * factors, so its error is of the order of the square, 1e-6.
 */
const SETTLED = 1e-3;
/**
 * Share of each proposed change that is taken. Full steps overshoot where many bounds share a track: whenever a pass
 * does not bring the change down to SLOW of the one before, the share is cut.
 */
const FIRST_SHARE = 0.9;
const SLOW = 0.95;
const SHARE_CUT = 0.7;
const LEAST_SHARE = 0.1;

/**
 * Posterior of the demand model given its four standard deviations, log metres.
 *
 * y = η + run + reading error with the level η = mu + track + rider + rider-on-track + condition, all normal. Exact
 * readings are conjugate; a bound contributes Φ(side·(η − limit)/√(run² + reading²)) and is replaced by the Gaussian
 * factor whose product with the rest has the same mean and variance: expectation propagation (minka2001),
 * docs/evidence/demand.md equations D2–D5. With no bounds the result is exact. `start` may hold the factors of a
 * neighbouring solution, `given` and `system` what is the same for many calls.
 * Valid for sds ≥ 0 and mu.sd > 0; every exact reading needs run² + reading² > 0.
 */
export function conditionalPosterior(
  design: DemandDesign,
  sds: DemandSds,
  mu: { mean: number; sd: number },
  start?: BoundFactors,
  given: ReadingsAtRunSd = readingsAtRunSd(design, sds.run, mu.mean),
  system: CellSystem = new CellSystem(design, mu.sd),
): ConditionalPosterior {
  system.use(sds);
  const { sums, bounds } = given;
  let factors = start ?? noFactors(design);
  let status: ConditionalPosterior['status'] = 'not-converged';
  let iterations = 0;
  let share = FIRST_SHARE;
  let lastChange = Number.POSITIVE_INFINITY;
  while (iterations < MAX_PASSES) {
    iterations += 1;
    if (!system.solve(sums, factors)) {
      status = 'not-positive-definite';
      break;
    }
    const { proposed, change } = passOverBounds(design, bounds, system, factors, share);
    if (change < SETTLED) {
      status = 'converged';
      break;
    }
    if (change > SLOW * lastChange) share = Math.max(LEAST_SHARE, SHARE_CUT * share);
    lastChange = change;
    if (iterations < MAX_PASSES) factors = proposed;
  }
  const logEvidence =
    status === 'not-positive-definite'
      ? Number.NaN
      : sums.constant + system.logIntegral + logCorrection(design, bounds, system, factors);
  return { ...system.unscaled(mu.mean), logEvidence, factors, bounds, iterations, status };
}

const noFactors = (design: DemandDesign): BoundFactors => ({
  precision: new Float64Array(design.bounds.cell.length),
  shift: new Float64Array(design.bounds.cell.length),
});

/** One pass over all bounds: proposes new factors, one after another within a cell, cells side by side. */
function passOverBounds(
  design: DemandDesign,
  bounds: readonly Bound[],
  system: CellSystem,
  factors: BoundFactors,
  share: number,
): { proposed: BoundFactors; change: number } {
  const { cell } = design.bounds;
  const proposed: BoundFactors = { precision: factors.precision.slice(), shift: factors.shift.slice() };
  let change = 0;
  for (let j = 0; j < cell.length;) {
    const c = cell[j] as number;
    const given = system.marginal(c);
    const givenPrecision = 1 / given.variance;
    let precisionNow = givenPrecision;
    let shiftNow = given.mean * givenPrecision;
    for (; j < cell.length && cell[j] === c; j += 1) {
      const oldPrecision = factors.precision[j] as number;
      const oldShift = factors.shift[j] as number;
      const restPrecision = precisionNow - oldPrecision;
      if (!(restPrecision > 0)) continue;
      const target = matchedFactor(bounds[j] as Bound, restPrecision, shiftNow - oldShift);
      const stepPrecision = share * (target.precision - oldPrecision);
      const stepShift = share * (target.shift - oldShift);
      proposed.precision[j] = oldPrecision + stepPrecision;
      proposed.shift[j] = oldShift + stepShift;
      precisionNow += stepPrecision;
      shiftNow += stepShift;
    }
    const meanChange = Math.abs(shiftNow / precisionNow - given.mean) * Math.sqrt(givenPrecision);
    const sdChange = 0.5 * Math.abs(precisionNow / givenPrecision - 1);
    change = Math.max(change, meanChange, sdChange);
  }
  return { proposed, change };
}

/** What the bounds add to the evidence beyond their Gaussian factors; equation D5. */
function logCorrection(
  design: DemandDesign,
  bounds: readonly Bound[],
  system: CellSystem,
  factors: BoundFactors,
): number {
  const { cell } = design.bounds;
  let sum = 0;
  for (let j = 0; j < cell.length;) {
    const c = cell[j] as number;
    const { mean, variance } = system.marginal(c);
    for (; j < cell.length && cell[j] === c; j += 1) {
      const bound = bounds[j] as Bound;
      sum += logBoundOverFactor(
        bound,
        mean,
        variance,
        factors.precision[j] as number,
        factors.shift[j] as number,
      );
    }
  }
  return sum;
}
