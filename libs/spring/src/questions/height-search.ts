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
/** Factor between tries for an upper bound. */
const BRACKET_GROWTH = 1.6;

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
    let landings = 0;
    const excess = (height: number) => {
      landings += 1;
      return this.travel(height) - travel;
    };
    let low: Point = { x: 0, y: excess(0) };
    if (low.y >= 0) return { status: 'below-sudden-load', landings };
    let high = point(excess, this.guess(travel));
    while (high.y < 0) {
      if (high.x >= HIGHEST_DROP) return { status: 'beyond-range', landings };
      low = high;
      high = point(excess, Math.min(HIGHEST_DROP, BRACKET_GROWTH * high.x));
    }
    const root = findRoot(excess, low, high, HEIGHT_TOLERANCE);
    if (root.status !== 'found') return { status: 'not-converged', landings };
    return { status: 'found', height: root.x, landings };
  }

  /** Height whose energy the spring and a moderate damper take by `travel`, m. */
  private guess(travel: number): number {
    const { spring, end } = this.hit;
    const weight = end.sprungMass * GRAVITY;
    const spent =
      (1 + DAMPER_SHARE) * polytropicEnergy(spring, travel, HEAT_CAPACITY_RATIO) +
      spring.unit.sealFriction * travel;
    const height = spent / weight - end.leverage.wheelTravel(travel);
    return Math.min(HIGHEST_DROP, Math.max(height, 0.1 * spring.stroke));
  }
}

function point(f: (x: number) => number, x: number): Point {
  return { x, y: f(x) };
}
