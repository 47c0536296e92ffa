import type { SprungEnd } from '../frame/sprung-end.js';
import type { AirSpring } from '../unit/air-spring.js';
import { springForce } from '../unit/force.js';
import { sag } from './sag.js';

/** Which way to look for rebound after the spring has changed. */
export type ReboundStep =
  | {
      readonly status: 'told';
      /** Spring rate from sag to deep travel, after over before, 1. */
      readonly rateRatio: number;
      /** Rebound damping that keeps the same way of returning, after over before, 1. */
      readonly dampingRatio: number;
      readonly direction: 'slower' | 'faster' | 'keep';
    }
  | { readonly status: 'no-sag' };

/** Deep end of the range through which a spring returns after a big hit, part of the stroke. */
const DEEP = 0.8;
/** A click of rebound changes the damping by more than this (common practice, no source): below it, leave it alone. */
const ONE_CLICK = 0.04;

/**
 * Change of rebound damping, as a ratio, that a changed spring asks for.
 *
 * The damping ratio ζ = c/(2√(k·m)) stays the same if c follows √k; k is the chord of the settled force from sag to 80 % of
 * the stroke; docs/equations/answers.md#rebound. A direction in which to try, not a number of clicks.
 */
export function reboundStep(before: AirSpring, after: AirSpring, end: SprungEnd): ReboundStep {
  const rateBefore = returnRate(before, end);
  const rateAfter = returnRate(after, end);
  if (rateBefore === undefined || rateAfter === undefined) return { status: 'no-sag' };
  const rateRatio = rateAfter / rateBefore;
  const dampingRatio = Math.sqrt(rateRatio);
  const direction =
    dampingRatio > 1 + ONE_CLICK ? 'slower' : dampingRatio < 1 - ONE_CLICK ? 'faster' : 'keep';
  return { status: 'told', rateRatio, dampingRatio, direction };
}

function returnRate(spring: AirSpring, end: SprungEnd): number | undefined {
  const settled = sag(spring, end);
  const deep = DEEP * spring.stroke;
  if (settled.status !== 'settled' || !(settled.travel < deep)) return undefined;
  return (springForce(spring, deep) - springForce(spring, settled.travel)) / (deep - settled.travel);
}
