import { GRAVITY, requireSprungEnd, type SprungEnd } from '../frame/sprung-end.js';
import { requireNumber } from '../numerics/input-error.js';
import { findRoot } from '../numerics/root.js';
import type { AirSpring } from '../unit/air-spring.js';
import type { AirSpringUnit } from '../unit/air-spring-unit.js';
import { springForce } from '../unit/force.js';
import { pressureForForce, type PressureAnswer, type UnpressurisedFill } from '../unit/pressure-for-force.js';

/** Where a spring settles under a load. */
export interface SettledTravel {
  readonly status: 'settled' | 'topped-out' | 'bottomed' | 'not-converged';
  /** m; 0 if topped out, the stroke if bottomed. */
  readonly travel: number;
  readonly iterations: number;
}

export interface SagResult extends SettledTravel {
  /** Travel over stroke, 1. */
  readonly fraction: number;
  /** Vertical travel of the wheel, m. */
  readonly wheelTravel: number;
}

/** Well below what a ring can show, m. */
const TRAVEL_TOLERANCE = 1e-12;

/**
 * Travel at which the settled spring carries `load(travel)` (N, along the travel), m.
 *
 * F(s) = load(s), isothermal, without friction; docs/equations/frame.md#sag. Outside [F(0), F(S)] it says topped out or
 * bottomed. Where a load grows faster with travel than the spring, one of the balances is returned.
 */
export function settle(spring: AirSpring, load: (travel: number) => number): SettledTravel {
  const excess = (travel: number) => springForce(spring, travel) - load(travel);
  const start = { x: 0, y: excess(0) };
  const end = { x: spring.stroke, y: excess(spring.stroke) };
  if (start.y >= 0) return { status: 'topped-out', travel: 0, iterations: 0 };
  if (end.y <= 0) return { status: 'bottomed', travel: spring.stroke, iterations: 0 };
  const root = findRoot(excess, start, end, TRAVEL_TOLERANCE);
  return {
    status: root.status === 'found' ? 'settled' : 'not-converged',
    travel: root.x,
    iterations: root.evaluations,
  };
}

/**
 * Sag of one end under the rider standing still, m.
 *
 * F(s) = m·g·LR(s); docs/equations/frame.md#sag.
 * @example sag(spring, { sprungMass: 37.5, leverage: forkLeverage(radian(1.117)) }).fraction
 */
export function sag(spring: AirSpring, end: SprungEnd): SagResult {
  requireSprungEnd(end);
  const settled = settle(spring, (travel) => end.sprungMass * GRAVITY * end.leverage.ratio(travel));
  return {
    ...settled,
    fraction: settled.travel / spring.stroke,
    wheelTravel: end.leverage.wheelTravel(settled.travel),
  };
}

/**
 * Gauge pressure at which the sag is a wanted fraction of the stroke, Pa.
 *
 * In closed form, docs/equations/spring.md#pressure-for-force.
 * @param sagFraction 0…1, both excluded.
 */
export function pressureForSag(
  unit: AirSpringUnit,
  fill: UnpressurisedFill,
  end: SprungEnd,
  sagFraction: number,
): PressureAnswer {
  requireSprungEnd(end);
  requireNumber('sagFraction', sagFraction, '1', { above: 0, below: 1 });
  const travel = sagFraction * unit.stroke;
  const load = end.sprungMass * GRAVITY * end.leverage.ratio(travel);
  return pressureForForce(unit, fill, travel, load);
}
