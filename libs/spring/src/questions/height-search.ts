import { Hit } from '../frame/hit.js';
import { GRAVITY, type SprungEnd } from '../frame/sprung-end.js';
import { HEAT_CAPACITY_RATIO } from '../gas/chamber.js';
import { findRoot, type Point } from '../numerics/root.js';
import type { AirSpring } from '../unit/air-spring.js';
import { polytropicEnergy, polytropicForce } from '../unit/force.js';
import { HIGHEST_DROP } from './landing.js';

/** A drop height (m), or why there is none; with the number of landings computed. */
export type HeightResult =
  | { readonly status: 'found'; readonly height: number; readonly landings: number }
  | { readonly status: 'below-sudden-load' | 'beyond-range' | 'not-converged'; readonly landings: number };

/** Heights are found to this, m: far below what a ring reading can tell. */
const HEIGHT_TOLERANCE = 1e-9;
/** The first guess lets the damper take about as much as this part of what the spring takes. */
const DAMPER_SHARE = 0.6;
/** A first guess is at least this part of the stroke, so that widening it gets somewhere. */
const SMALLEST_GUESS = 0.1;
/** Relative distance of two landings next to a good guess. */
const NEAR_WIDTH = 1e-3;
/** Factor between tries for an upper bound. */
const BRACKET_GROWTH = 1.6;

/** Landings at a height, as points of travel used less travel sought, and how many there were. */
interface CountedLandings {
  readonly landings: number;
  point(height: number): Point;
}

/**
 * Landings of one spring and end, searched for the height that uses a given travel. The travel used is carried on
 * past the end of the stroke by the energy left over there, so that one smooth rising function serves both a travel
 * within the stroke and the height that just bottoms: docs/equations/frame.md#hit-height.
 */
export class HeightSearch {
  private readonly hit: Hit;
  private readonly bottomForce: number;

  constructor(
    spring: AirSpring,
    end: SprungEnd,
    private readonly relativeTolerance: number,
  ) {
    this.hit = new Hit(spring, end, false);
    const load = end.sprungMass * GRAVITY * end.leverage.ratio(spring.stroke);
    const force = polytropicForce(spring, spring.stroke, HEAT_CAPACITY_RATIO);
    this.bottomForce = Math.max(force + spring.unit.sealFriction - load, load);
  }

  /** Travel used by a drop, m; beyond the stroke if it bottoms, NaN if it could not be computed. */
  travel(height: number): number {
    const { hit } = this;
    const { sprungMass, leverage } = hit.end;
    const status = hit.run(height, this.relativeTolerance);
    if (status === 'not-converged') return NaN;
    const travel = hit.motion.travel.value;
    if (status === 'peak') return travel;
    const wheelSpeed = leverage.ratio(travel) * hit.motion.speed.value;
    return travel + (sprungMass * wheelSpeed ** 2) / 2 / this.bottomForce;
  }

  /** Height of the drop that uses `travel` (at most the stroke), m. */
  heightFor(travel: number): HeightResult {
    const at = this.counting(travel);
    const bracket = this.bracket(at, travel);
    if (typeof bracket === 'string') return { status: bracket, landings: at.landings };
    const root = findRoot((height) => at.point(height).y, ...bracket, HEIGHT_TOLERANCE);
    const { landings } = at;
    return root.status === 'found'
      ? { status: 'found', height: root.x, landings }
      : { status: 'not-converged', landings };
  }

  /**
   * The same next to a good guess, from two landings on both sides by a straight line between them (1e-5 of the height);
   * the full search where they are not on both sides.
   */
  heightNear(travel: number, guess: number): HeightResult {
    const at = this.counting(travel);
    if (!(guess > 0 && guess < HIGHEST_DROP)) return this.heightFor(travel);
    const a = at.point(guess);
    const b = at.point(guess * (a.y < 0 ? 1 + NEAR_WIDTH : 1 - NEAR_WIDTH));
    if (!(a.y < 0 !== b.y < 0)) return this.heightFor(travel);
    const height = a.x - (a.y * (b.x - a.x)) / (b.y - a.y);
    return { status: 'found', height, landings: at.landings };
  }

  private counting(travel: number): CountedLandings {
    const counted = {
      landings: 0,
      point: (height: number): Point => {
        counted.landings += 1;
        return { x: height, y: this.travel(height) - travel };
      },
    };
    return counted;
  }

  /** Two heights on both sides of the one sought, from no drop at all upwards. */
  private bracket(
    at: CountedLandings,
    travel: number,
  ): [Point, Point] | 'below-sudden-load' | 'beyond-range' {
    let low = at.point(0);
    if (low.y >= 0) return 'below-sudden-load';
    let high = at.point(this.guess(travel));
    while (high.y < 0) {
      if (high.x >= HIGHEST_DROP) return 'beyond-range';
      low = high;
      high = at.point(Math.min(HIGHEST_DROP, BRACKET_GROWTH * high.x));
    }
    return [low, high];
  }

  /** Height whose energy the spring and a moderate damper take by `travel`, m. */
  private guess(travel: number): number {
    const { spring, end } = this.hit;
    const weight = end.sprungMass * GRAVITY;
    const spent =
      (1 + DAMPER_SHARE) * polytropicEnergy(spring, travel, HEAT_CAPACITY_RATIO) +
      spring.unit.sealFriction * travel;
    const height = spent / weight - end.leverage.wheelTravel(travel);
    return Math.min(HIGHEST_DROP, Math.max(height, SMALLEST_GUESS * spring.stroke));
  }
}
