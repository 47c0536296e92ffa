import type { BoundFactors } from './bound-factor.js';
import type { DemandSds } from './cell-system.js';
import {
  conditionalPosterior,
  PosteriorSpace,
  readingsAtRunSd,
  type ConditionalPosterior,
  type ReadingsAtRunSd,
} from './conditional-posterior.js';
import type { DemandDesign } from './design.js';
import type { DemandPriors, FixedSds } from './reading.js';
import { trackSkew, type TrackSkew } from './track-skew.js';

const COMPONENTS = ['track', 'rider', 'riderOnTrack', 'run'] as const;
/** A random part of the model. */
export type SdComponent = (typeof COMPONENTS)[number];

/**
 * Coordinate of a standard deviation: sd = knee·sinh(u), linear near 0 and logarithmic above, knee = this share of
 * the prior scale. The posterior is an even analytic function of u, so equal steps from half a step on integrate it
 * with an error that falls faster than any power of the step (trefethen2014).
 */
const KNEE_SHARE = 0.2;
/** Where a standard deviation equals the scale of its prior, in u. */
export const SCALE_OF_PRIOR = Math.asinh(1 / KNEE_SHARE);
/** One place on the surface, with what was found there. */
export interface Place {
  /** Coordinates of the free standard deviations. */
  u: readonly number[];
  sds: DemandSds;
  logDensity: number;
  posterior: ConditionalPosterior;
}

/** The log posterior density over the coordinates of the free standard deviations. */
export class SdSurface {
  readonly free: readonly SdComponent[];
  evaluations = 0;
  unsettled = 0;
  private readonly scales: DemandSds;
  private readonly atRunSds = new Map<number, ReadingsAtRunSd>();
  private readonly space: PosteriorSpace;

  constructor(
    private readonly design: DemandDesign,
    private readonly priors: DemandPriors,
    private readonly fixed: FixedSds,
  ) {
    this.space = new PosteriorSpace(design, priors.muSd);
    this.free = COMPONENTS.filter((name) => fixed[name] === undefined);
    this.scales = {
      track: priors.trackSdScale,
      rider: priors.riderSdScale,
      riderOnTrack: priors.riderOnTrackSdScale,
      run: priors.runSdScale,
    };
  }

  /** Sd below which the coordinate of a component is linear, log metres. */
  knee(name: SdComponent): number {
    return KNEE_SHARE * this.scales[name];
  }

  /** The density at a place; `start` as of conditionalPosterior. */
  at(u: readonly number[], start?: BoundFactors): Place {
    this.evaluations += 1;
    const sds: DemandSds = {
      track: this.fixed.track ?? 0,
      rider: this.fixed.rider ?? 0,
      riderOnTrack: this.fixed.riderOnTrack ?? 0,
      run: this.fixed.run ?? 0,
    };
    let logPrior = 0;
    for (const [axis, name] of this.free.entries()) {
      const scale = this.scales[name];
      const knee = this.knee(name);
      const sd = knee * Math.sinh(u[axis] as number);
      sds[name] = sd;
      logPrior += Math.log(knee * Math.cosh(u[axis] as number)) - 0.5 * (sd / scale) ** 2;
    }
    const mu = { mean: this.priors.muMean, sd: this.priors.muSd };
    const posterior = conditionalPosterior(this.design, sds, mu, start, this.atRunSd(sds.run), this.space);
    if (posterior.status !== 'converged') this.unsettled += 1;
    const logDensity = Number.isFinite(posterior.logEvidence)
      ? posterior.logEvidence + logPrior
      : Number.NEGATIVE_INFINITY;
    return { u, sds, logDensity, posterior };
  }

  skewAt(place: Place, track: number): TrackSkew {
    return trackSkew(this.design, place.posterior, this.priors.muMean, track);
  }

  /** On the lattice the same few run sds return again and again, and the sums over all readings with them. */
  private atRunSd(runSd: number): ReadingsAtRunSd {
    const known = this.atRunSds.get(runSd);
    if (known !== undefined) return known;
    const given = readingsAtRunSd(this.design, runSd, this.priors.muMean);
    this.atRunSds.set(runSd, given);
    return given;
  }
}
