import type { BoundFactors } from './bound-factor.js';
import { BoundPasses, SETTLED } from './bound-passes.js';
import { BoundsAtRunSd } from './bounds-at-run-sd.js';
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
  bounds: BoundsAtRunSd;
  iterations: number;
  status: 'converged' | 'not-converged' | 'not-positive-definite';
}

/** What the readings say when the run sd is given. */
export interface ReadingsAtRunSd {
  sums: ExactSums;
  bounds: BoundsAtRunSd;
}

/** Exact readings summed up and bounds for a run sd (log m), counted from `centre` (log m). */
export const readingsAtRunSd = (design: DemandDesign, runSd: number, centre: number): ReadingsAtRunSd => ({
  sums: exactSums(design, runSd, centre),
  bounds: new BoundsAtRunSd(design, runSd, centre),
});

/** Passes over the bounds; two or three are usual, a few dozen where mixing does not settle. */
const MAX_PASSES = 200;
/** What is the same for all posteriors of one design: working space, so that nothing is allocated pass by pass. */
export class PosteriorSpace {
  readonly system: CellSystem;
  readonly passes: BoundPasses;

  constructor(design: DemandDesign, muSd: number) {
    this.system = new CellSystem(design, muSd);
    this.passes = new BoundPasses(design);
  }
}

/**
 * Posterior of the demand model given its four standard deviations, log metres.
 *
 * y = η + run + reading error with the level η = mu + track + rider + rider-on-track + condition, all normal. Exact
 * readings are conjugate; a bound contributes Φ(side·(η − limit)/√(run² + reading²)) and is replaced by the Gaussian
 * factor whose product with the rest has the same mean and variance: expectation propagation (minka2001),
 * docs/evidence/demand.md equations D2–D5. With no bounds the result is exact. `start` may hold the factors of a
 * neighbouring solution, `given` and `space` what is the same for many calls.
 * Valid for sds ≥ 0 and mu.sd > 0; every exact reading needs run² + reading² > 0.
 */
export function conditionalPosterior(
  design: DemandDesign,
  sds: DemandSds,
  mu: { mean: number; sd: number },
  start?: BoundFactors,
  given: ReadingsAtRunSd = readingsAtRunSd(design, sds.run, mu.mean),
  { system, passes }: PosteriorSpace = new PosteriorSpace(design, mu.sd),
): ConditionalPosterior {
  system.use(sds);
  passes.begin(given.bounds, start);
  let status: ConditionalPosterior['status'] = 'not-converged';
  let iterations = 0;
  for (;;) {
    if (!system.solve(given.sums, passes.factors)) {
      status = 'not-positive-definite';
      break;
    }
    if (iterations === MAX_PASSES) break;
    iterations += 1;
    if (passes.pass(system) < SETTLED) {
      status = 'converged';
      break;
    }
  }
  const logEvidence =
    status === 'not-positive-definite'
      ? Number.NaN
      : given.sums.constant + system.logIntegral + passes.logCorrection(system);
  const { bounds } = given;
  return { ...system.unscaled(mu.mean), logEvidence, factors: passes.found(), bounds, iterations, status };
}
