import { requireNumber } from '../numerics/input-error.js';
import type { LeverageCurve } from './leverage.js';

/** Standard acceleration of gravity, m/s² (3rd CGPM, 1901). */
export const GRAVITY = 9.80665;
/** Heavier than any rider with bike, kg. */
export const HEAVIEST = 500;

/** One end of a bike: the mass that its spring carries and how the wheel moves it. */
export interface SprungEnd {
  /** kg. */
  readonly sprungMass: number;
  readonly leverage: LeverageCurve;
}

/** Throws a SpringInputError unless the sprung mass is a mass. */
export function requireSprungEnd(end: SprungEnd): void {
  requireNumber('end.sprungMass', end.sprungMass, 'kg', { above: 0, atMost: HEAVIEST });
}

/**
 * Mass carried by the spring of one end, kg.
 *
 * m = share·(rider + bike) − unsprung mass of that end; docs/equations/frame.md#sprung-mass.
 * @param input.riderMass rider ready to ride, kg. @param input.bikeMass whole bike, kg.
 * @param input.loadShare part of the total weight on that wheel, 0…1. @param input.unsprungMass of that end, kg.
 * @throws SpringInputError if a mass is not positive or nothing is left to carry.
 */
export function sprungMass(input: {
  readonly riderMass: number;
  readonly bikeMass: number;
  readonly loadShare: number;
  readonly unsprungMass: number;
}): number {
  requireNumber('riderMass', input.riderMass, 'kg', { above: 0, atMost: HEAVIEST });
  requireNumber('bikeMass', input.bikeMass, 'kg', { above: 0, atMost: HEAVIEST });
  requireNumber('loadShare', input.loadShare, '1', { above: 0, below: 1 });
  const load = input.loadShare * (input.riderMass + input.bikeMass);
  requireNumber('unsprungMass', input.unsprungMass, 'kg', { atLeast: 0, below: load });
  return load - input.unsprungMass;
}
