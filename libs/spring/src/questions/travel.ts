import { Hit, type HitEnd } from '../frame/hit.js';
import { requireSprungEnd, type SprungEnd } from '../frame/sprung-end.js';
import { requireNumber } from '../numerics/input-error.js';
import type { AirSpring } from '../unit/air-spring.js';
import { HeightSearch, type HeightResult } from './height-search.js';
import { DEFAULT_TOLERANCE, HIGHEST_DROP } from './landing.js';

/** Travel that a hit uses. */
export interface TravelResult {
  readonly status: HitEnd;
  /** m; the stroke if bottomed; where it stopped if not converged. */
  readonly travel: number;
  /** Travel over stroke, 1. */
  readonly fraction: number;
}

/**
 * Travel used by the landing from a height, m: the peak of `landing` without force and energies, and faster.
 * @throws SpringInputError for a height outside 0…20 m.
 */
export function travelForHeight(spring: AirSpring, end: SprungEnd, height: number): TravelResult {
  requireSprungEnd(end);
  requireNumber('height', height, 'm', { atLeast: 0, atMost: HIGHEST_DROP });
  const hit = new Hit(spring, end, false);
  const status = hit.run(height, DEFAULT_TOLERANCE);
  const travel = hit.motion.travel.value;
  return { status, travel, fraction: travel / spring.stroke };
}

/** Travel used when the load is put on suddenly without a drop (h = 0), m; no hit uses less. */
export function suddenLoadTravel(spring: AirSpring, end: SprungEnd): TravelResult {
  return travelForHeight(spring, end, 0);
}

/**
 * Height of the drop that just bottoms: the fullest hit, m.
 *
 * docs/equations/frame.md#hit-height. `below-sudden-load`: it bottoms without any drop; `beyond-range`: not from 20 m.
 */
export function bottomingHeight(spring: AirSpring, end: SprungEnd): HeightResult {
  requireSprungEnd(end);
  return new HeightSearch(spring, end, DEFAULT_TOLERANCE).heightFor(spring.stroke);
}
