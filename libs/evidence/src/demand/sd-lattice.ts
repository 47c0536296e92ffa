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

/** One point of the lattice over the standard deviations. */
export interface LatticePoint {
  sds: DemandSds;
  /** Place on the lattice, one index a free component. */
  index: readonly number[];
  /** log of (posterior density × Jacobian), up to a constant. */
  logDensity: number;
  posterior: ConditionalPosterior;
  /** Weights along the level of each track that rests on bounds, in the order they were asked for. */
  skews: readonly (readonly number[])[];
}

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

/**
 * Coordinate of a standard deviation: sd = knee·sinh(u), linear near 0 and logarithmic above, knee = this share of
 * the prior scale. The posterior is an even analytic function of u, so equal steps from half a step on integrate it
 * with an error that falls faster than any power of the step (trefethen2014).
 */
const KNEE_SHARE = 0.2;
/** Lattice step in posterior sds of u: an equal-step sum over a normal density is then right to 2 exp(−2π²/1.6²) = 9e-4. */
const STEP_IN_SDS = 1.6;
/** With four axes, where points are dear: right to 2 exp(−2π²/1.9²) = 8e-3. */
const STEP_OF_FOUR_AXES = 1.9;
/** Largest step in u where the posterior says next to nothing: a third of a half-normal prior's width in u. */
const WIDEST_STEP = 0.6;
/** The lattice is followed down to exp(−7) of its peak: beyond lies 0.3 % of a normal density in three dimensions, 0.7 % in four. */
const DEPTH = 7;
/** Bound on the lattice's size; reached only by a posterior that no data set of this kind has. */
const MAX_POINTS = 4000;

const FIRST_SEARCH_STEP = 0.8;
const LAST_SEARCH_STEP = 0.05;
/** The step along an axis is halved until the log density falls by less than this, so that the fall measures its width. */
const MEASURABLE_FALL = 2;
const SHORTEST_MEASURE = 1e-4;

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
  const steps = surface.free.map((_, axis) => stepAlong(surface, top, axis));
  const points = flood(surface, top, steps, skewed);
  const axes = surface.free.map((name, axis) => ({
    name,
    knee: KNEE_SHARE * surface.scales[name],
    step: steps[axis] as number,
  }));
  return { axes, points, evaluations: surface.evaluations, unsettled: surface.unsettled };
}

interface Place {
  u: readonly number[];
  sds: DemandSds;
  logDensity: number;
  posterior: ConditionalPosterior;
}

/** The log posterior density over the coordinates of the free standard deviations. */
class SdSurface {
  readonly free: readonly SdComponent[];
  evaluations = 0;
  unsettled = 0;
  readonly scales: DemandSds;
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

  at(u: readonly number[], near?: Place): Place {
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
      const knee = KNEE_SHARE * scale;
      const sd = knee * Math.sinh(u[axis] as number);
      sds[name] = sd;
      logPrior += Math.log(knee * Math.cosh(u[axis] as number)) - 0.5 * (sd / scale) ** 2;
    }
    const mu = { mean: this.priors.muMean, sd: this.priors.muSd };
    const posterior = conditionalPosterior(
      this.design,
      sds,
      mu,
      near?.posterior.factors,
      this.atRunSd(sds.run),
      this.space,
    );
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

const moved = (u: readonly number[], axis: number, by: number): number[] =>
  u.map((value, i) => (i === axis ? Math.abs(value + by) : value));

/** Highest place found by a pattern search (hooke1961): steps along the axes, halved when none leads up. */
function climb(surface: SdSurface): Place {
  // The scale of each prior: asinh(1/KNEE_SHARE).
  let top = surface.at(surface.free.map(() => Math.asinh(1 / KNEE_SHARE)));
  let step = FIRST_SEARCH_STEP;
  while (step >= LAST_SEARCH_STEP) {
    let improved = false;
    for (const axis of surface.free.keys()) {
      for (const by of [step, -step]) {
        const trial = surface.at(moved(top.u, axis, by), top);
        if (trial.logDensity > top.logDensity) {
          top = trial;
          improved = true;
          break;
        }
      }
    }
    if (!improved) step /= 2;
  }
  return top;
}

/** Lattice step along one axis, from the fall of the log density to both sides of the top. */
function stepAlong(surface: SdSurface, top: Place, axis: number): number {
  const wanted = top.u.length > 3 ? STEP_OF_FOUR_AXES : STEP_IN_SDS;
  let by = WIDEST_STEP;
  for (;;) {
    const above = surface.at(moved(top.u, axis, by), top).logDensity;
    const below = surface.at(moved(top.u, axis, -by), top).logDensity;
    const fall = top.logDensity - (above + below) / 2;
    if (fall < MEASURABLE_FALL || by < SHORTEST_MEASURE) {
      const widest = WIDEST_STEP;
      return fall > 0 ? Math.min(widest, (wanted * by) / Math.sqrt(2 * fall)) : widest;
    }
    by /= 2;
  }
}

/**
 * All lattice points that are connected to the top and not far below it. A point is left out where the line through the
 * two before it already lies too low: log densities of this kind bend downwards, so the point lies lower still.
 */
function flood(
  surface: SdSurface,
  top: Place,
  steps: readonly number[],
  skewed: readonly number[],
): LatticePoint[] {
  const start = top.u.map((value, axis) => Math.max(0, Math.round(value / (steps[axis] as number) - 0.5)));
  const points: LatticePoint[] = [];
  const found = new Map<string, number>();
  const asked = new Set([start.join()]);
  const queue: { index: number[]; near: Place }[] = [{ index: start, near: top }];
  let peak = Number.NEGATIVE_INFINITY;
  for (let next = queue.shift(); next !== undefined && points.length < MAX_POINTS; next = queue.shift()) {
    const { index } = next;
    const place = surface.at(
      index.map((k, axis) => (k + 0.5) * (steps[axis] as number)),
      next.near,
    );
    if (!Number.isFinite(place.logDensity)) continue;
    const skews = skewed.map((track) => surface.skewAt(place, track));
    const logDensity = skews.reduce((sum, skew) => sum + skew.logCorrection, place.logDensity);
    const { sds, posterior } = place;
    points.push({ sds, index, logDensity, posterior, skews: skews.map((skew) => skew.weights) });
    found.set(index.join(), logDensity);
    peak = Math.max(peak, logDensity);
    if (logDensity < peak - DEPTH) continue;
    for (const axis of index.keys()) {
      for (const by of [1, -1]) {
        const placeAt = (places: number): number[] => index.map((k, i) => (i === axis ? k + places : k));
        const neighbour = placeAt(by);
        const key = neighbour.join();
        if ((neighbour[axis] as number) < 0 || asked.has(key)) continue;
        const before = found.get(placeAt(-by).join()) ?? logDensity;
        if (2 * logDensity - before < peak - DEPTH) continue;
        asked.add(key);
        queue.push({ index: neighbour, near: place });
      }
    }
  }
  return points;
}
