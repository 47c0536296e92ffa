import type { DemandDesign } from './design.js';
import type { DemandPriors, FixedSds } from './reading.js';
import { SdFlood, type LatticePoint } from './sd-flood.js';
import { SdSurface, type SdComponent } from './sd-surface.js';
import { climb } from './sd-top.js';

/** The posterior of the standard deviations as weighted points, with the conditional posterior at each. */
export interface SdLattice {
  /** The free components, in the order of LatticePoint.index: sd = knee·sinh((index + ½)·step). */
  axes: readonly { name: SdComponent; knee: number; step: number }[];
  points: readonly LatticePoint[];
  /** Evaluations of the conditional posterior, search included. */
  evaluations: number;
  /** Evaluations at which the passes over the bounds did not settle. */
  unsettled: number;
}

/** Lattice step in posterior sds of u: an equal-step sum over a normal density is then right to 2 exp(−2π²/1.6²) = 9e-4. */
const STEP_IN_SDS = 1.6;
/** With four axes, where points are dear: right to 2 exp(−2π²/1.8²) = 5e-3. */
const STEP_OF_FOUR_AXES = 1.8;
/** Largest step in u where the posterior says next to nothing: a third of a half-normal prior's width in u. */
const WIDEST_STEP = 0.6;

/** Integrates the demand model over its unknown standard deviations; equations D6–D8 of docs/evidence/demand.md.
 * `skewed` lists the tracks, by index, whose level rests on bounds. */
export function sdLattice(
  design: DemandDesign,
  priors: DemandPriors,
  fixed: FixedSds,
  skewed: readonly number[],
): SdLattice {
  const surface = new SdSurface(design, priors, fixed);
  const top = climb(surface);
  const wanted = surface.free.length > 3 ? STEP_OF_FOUR_AXES : STEP_IN_SDS;
  const axes = surface.free.map((name, axis) => {
    const sd = top.sds[axis] as number;
    return { name, knee: surface.knee(name), step: Math.min(WIDEST_STEP, wanted * sd), sd };
  });
  const points = new SdFlood(surface, axes, skewed).pointsAround(top.place);
  return { axes, points, evaluations: surface.evaluations, unsettled: surface.unsettled };
}
