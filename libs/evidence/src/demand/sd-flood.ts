import type { BoundFactors } from './bound-factor.js';
import type { LatticePoint } from './sd-lattice.js';
import type { Place, SdSurface } from './sd-surface.js';

/** The lattice is followed down to exp(−7.5) of its peak: beyond lies 0.2 % of a normal density in three dimensions, 0.5 % in four. */
const DEPTH = 7.5;
/** Share of the bend of a parabola as wide as the posterior that the density is trusted to keep away from the top. */
const TRUSTED_BEND = 0.5;
/** Bound on the lattice's size; reached only by a posterior that no data set of this kind has. */
const MAX_POINTS = 4000;

/** An axis of the lattice: u = (index + ½)·step, and the posterior sd of u along it. */
interface FloodAxis {
  step: number;
  sd: number;
}

/** What is known of a lattice point. */
interface Reached {
  logDensity: number;
  factors: BoundFactors;
}

/** A point to look at: beside a point of `logDensity`, whose factors to start from. */
interface Candidate extends Reached {
  index: readonly number[];
}

/** Finds all lattice points that are connected to the top and not far below it, from the highest outwards. */
export class SdFlood {
  private readonly reached = new Map<string, Reached>();
  private readonly asked = new Set<string>();
  private readonly candidates: Candidate[] = [];
  private peak = Number.NEGATIVE_INFINITY;

  /** `skewed` lists the tracks, by index, whose level rests on bounds. */
  constructor(
    private readonly surface: SdSurface,
    private readonly axes: readonly FloodAxis[],
    private readonly skewed: readonly number[],
  ) {}

  pointsAround(top: Place): LatticePoint[] {
    const points: LatticePoint[] = [];
    const nearest = top.u.map((value, axis) => Math.max(0, Math.round(value / this.axis(axis).step - 0.5)));
    this.ask(nearest, { logDensity: top.logDensity, factors: top.posterior.factors });
    for (let next = this.next(); next !== undefined && points.length < MAX_POINTS; next = this.next()) {
      if (this.highestExpected(next.index) < this.peak - DEPTH) continue;
      const point = this.pointAt(next);
      if (point === undefined) continue;
      points.push(point);
      const found = { logDensity: point.logDensity, factors: point.posterior.factors };
      this.reached.set(point.index.join(), found);
      this.peak = Math.max(this.peak, point.logDensity);
      if (point.logDensity < this.peak - DEPTH) continue;
      for (const axis of point.index.keys()) {
        this.ask(along(point.index, axis, 1), found);
        this.ask(along(point.index, axis, -1), found);
      }
    }
    return points;
  }

  private axis(axis: number): FloodAxis {
    return this.axes[axis] as FloodAxis;
  }

  private ask(index: readonly number[], beside: Reached): void {
    const key = index.join();
    if (index.some((k) => k < 0) || this.asked.has(key)) return;
    this.asked.add(key);
    this.candidates.push({ index, ...beside });
  }

  /** The candidate beside the highest point, so that as much as possible is known around it. */
  private next(): Candidate | undefined {
    let best = 0;
    for (const [i, { logDensity }] of this.candidates.entries()) {
      if (logDensity > (this.candidates[best] as Candidate).logDensity) best = i;
    }
    return this.candidates.splice(best, 1)[0];
  }

  /**
   * A bound, in effect, on the log density of a point: the line through the two points before it along an axis, and
   * below that line half of what a parabola of the posterior's width would fall.
   */
  private highestExpected(index: readonly number[]): number {
    let least = Number.POSITIVE_INFINITY;
    for (const [one, two, axis] of this.linesTo(index)) {
      const { step, sd } = this.axis(axis);
      least = Math.min(least, 2 * one.logDensity - two.logDensity - TRUSTED_BEND * (step / sd) ** 2);
    }
    return least;
  }

  /** Pairs of known points one and two steps from a point along each axis. */
  private *linesTo(index: readonly number[]): Generator<[Reached, Reached, number]> {
    for (const axis of index.keys()) {
      for (const by of [1, -1]) {
        const one = this.reached.get(along(index, axis, by).join());
        const two = one && this.reached.get(along(index, axis, 2 * by).join());
        if (one !== undefined && two !== undefined) yield [one, two, axis];
      }
    }
  }

  /** Factors on the straight line through two known points, or those of the point beside. */
  private startOf({ index, factors }: Candidate): BoundFactors {
    const [line] = this.linesTo(index);
    if (line === undefined) return factors;
    const [{ factors: one }, { factors: two }] = line;
    return {
      // A bound's factor never has less than no precision.
      precision: one.precision.map((value, j) => Math.max(0, 2 * value - (two.precision[j] as number))),
      shift: one.shift.map((value, j) => 2 * value - (two.shift[j] as number)),
    };
  }

  private pointAt(candidate: Candidate): LatticePoint | undefined {
    const { index } = candidate;
    const u = index.map((k, axis) => (k + 0.5) * this.axis(axis).step);
    const place = this.surface.at(u, this.startOf(candidate));
    if (!Number.isFinite(place.logDensity)) return undefined;
    const skews = this.skewed.map((track) => this.surface.skewAt(place, track));
    return {
      sds: place.sds,
      index,
      logDensity: skews.reduce((sum, skew) => sum + skew.logCorrection, place.logDensity),
      posterior: place.posterior,
      skews: skews.map((skew) => skew.weights),
    };
  }
}

const along = (index: readonly number[], axis: number, places: number): number[] =>
  index.map((k, i) => (i === axis ? k + places : k));
