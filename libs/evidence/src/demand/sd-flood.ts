import { precisionAtLeast0, type BoundFactors } from './bound-factor.js';
import type { DemandSds } from './cell-system.js';
import type { ConditionalPosterior } from './conditional-posterior.js';
import type { Place, SdSurface } from './sd-surface.js';

/** The lattice is followed down to exp(−7.5) of its peak: beyond lies 0.2 % of a normal density in three dimensions, 0.5 % in four. */
const DEPTH = 7.5;
/** Share of the bend of a parabola as wide as the posterior that the density is trusted to keep away from the top. */
const TRUSTED_BEND = 0.5;
/** Bound on the lattice's size; reached only by a posterior that no data set of this kind has. */
const MAX_POINTS = 4000;

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
  key: number;
}

/** What the known points around a point say of it. */
interface Outlook {
  /** A bound, in effect, on its log density; Infinity where no two points in line are known. */
  highest: number;
  /** The points one and two steps from it along an axis. */
  line: { one: Reached; two: Reached } | null;
}

/** Places an axis takes in a point's key, those of the start in the middle: more than MAX_POINTS can reach; four fill 2⁵². */
const KEYS_AN_AXIS = 2 ** 13;

/** Finds all lattice points that are connected to the top and not far below it, from the highest outwards. */
export class SdFlood {
  /** By key: a number a point, which grows by strides[axis] a step along an axis. */
  private readonly reached = new Map<number, Reached>();
  private readonly asked = new Set<number>();
  private readonly strides: readonly number[];
  private readonly candidates: Candidate[] = [];
  private peak = Number.NEGATIVE_INFINITY;

  /** `skewed` lists the tracks, by index, whose level rests on bounds. */
  constructor(
    private readonly surface: SdSurface,
    private readonly axes: readonly FloodAxis[],
    private readonly skewed: readonly number[],
  ) {
    this.strides = axes.map((_, axis) => KEYS_AN_AXIS ** axis);
  }

  pointsAround(top: Place): LatticePoint[] {
    const points: LatticePoint[] = [];
    const start = top.u.map((value, axis) => Math.max(0, Math.round(value / this.axis(axis).step - 0.5)));
    const startKey = this.strides.reduce((key, stride) => key + (KEYS_AN_AXIS / 2) * stride, 0);
    this.ask(start, startKey, { logDensity: top.logDensity, factors: top.posterior.factors });
    for (let next = this.next(); next !== undefined && points.length < MAX_POINTS; next = this.next()) {
      const { highest, line } = this.outlookOf(next.key);
      if (highest < this.peak - DEPTH) continue;
      const point = this.pointAt(next.index, line === null ? next.factors : beyond(line.one, line.two));
      if (point === undefined) continue;
      points.push(point);
      this.peak = Math.max(this.peak, point.logDensity);
      const found = { logDensity: point.logDensity, factors: point.posterior.factors };
      this.reached.set(next.key, found);
      if (point.logDensity >= this.peak - DEPTH) this.askAround(next, found);
    }
    return points;
  }

  private axis(axis: number): FloodAxis {
    return this.axes[axis] as FloodAxis;
  }

  private ask(index: readonly number[], key: number, beside: Reached): void {
    this.asked.add(key);
    this.candidates.push({ index, key, logDensity: beside.logDensity, factors: beside.factors });
  }

  private askAround({ index, key }: Candidate, found: Reached): void {
    for (const [axis, stride] of this.strides.entries()) {
      const place = index[axis] as number;
      for (const by of place === 0 ? [1] : [1, -1]) {
        const neighbour = key + by * stride;
        if (this.asked.has(neighbour)) continue;
        this.ask(index.with(axis, place + by), neighbour, found);
      }
    }
  }

  /** The candidate beside the highest point, so that as much as possible is known around it. */
  private next(): Candidate | undefined {
    const { candidates } = this;
    let best = 0;
    for (let i = 1; i < candidates.length; i += 1) {
      if ((candidates[i] as Candidate).logDensity > (candidates[best] as Candidate).logDensity) best = i;
    }
    const found = candidates[best];
    const last = candidates.pop();
    if (last !== undefined && best < candidates.length) candidates[best] = last;
    return found;
  }

  /**
   * A point is expected below the line through the two points before it along an axis, and below that line by half of
   * what a parabola of the posterior's width would fall.
   */
  private outlookOf(key: number): Outlook {
    const outlook: Outlook = { highest: Number.POSITIVE_INFINITY, line: null };
    for (let axis = 0; axis < this.axes.length; axis += 1) {
      const { step, sd } = this.axis(axis);
      for (let by = -1; by <= 1; by += 2) {
        const stride = by * (this.strides[axis] as number);
        const one = this.reached.get(key + stride);
        const two = one && this.reached.get(key + 2 * stride);
        if (one === undefined || two === undefined) continue;
        outlook.line ??= { one, two };
        const onLine = 2 * one.logDensity - two.logDensity;
        outlook.highest = Math.min(outlook.highest, onLine - TRUSTED_BEND * (step / sd) ** 2);
      }
    }
    return outlook;
  }

  private pointAt(index: readonly number[], start: BoundFactors): LatticePoint | undefined {
    const u = index.map((k, axis) => (k + 0.5) * this.axis(axis).step);
    const place = this.surface.at(u, start);
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

/** Factors one step further on the straight line through two points. */
function beyond({ factors: one }: Reached, { factors: two }: Reached): BoundFactors {
  const factors = {
    precision: one.precision.map((value, j) => 2 * value - (two.precision[j] as number)),
    shift: one.shift.map((value, j) => 2 * value - (two.shift[j] as number)),
  };
  precisionAtLeast0(factors);
  return factors;
}
