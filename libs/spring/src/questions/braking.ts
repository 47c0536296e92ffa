import { radian, type Radian } from '@loamledger/units';
import { GRAVITY, HEAVIEST } from '../frame/sprung-end.js';
import { requireNumber } from '../numerics/input-error.js';
import type { AirSpring } from '../unit/air-spring.js';
import { settle } from './sag.js';

/** A bike with its rider, braking steadily down a slope. */
export interface BrakingCase {
  /** Rider and bike, kg. */
  readonly totalMass: number;
  /** m. */
  readonly wheelbase: number;
  /** Height of the common centre of mass over the ground, m. */
  readonly centreHeight: number;
  /** Distance of that centre before the rear contact along the ground, m. */
  readonly centreToRear: number;
  /** Wheel, brake and lower legs of the front, kg. */
  readonly frontUnsprungMass: number;
  /** Part of the braking done by the front wheel, 0…1. */
  readonly frontBrakeShare: number;
  /** Head angle from the ground on the level at `referenceTravel`. */
  readonly headAngle: Radian;
  /** Fork travel at which the head angle holds, m. */
  readonly referenceTravel: number;
  /** Angle of the ground, positive downhill. */
  readonly slope: Radian;
  /** Deceleration along the ground, m/s²; 0 at steady speed. */
  readonly deceleration: number;
}

/**
 * The braking in which set-ups are compared, wherever a figure of it is shown: hard (m/s²), down a slope (10°), most of
 * it by the front wheel (part of 1), and short of lifting the rear wheel of a usual bike. Common practice, no source.
 */
export const REFERENCE_BRAKING = {
  deceleration: 4,
  slope: radian(Math.PI / 18),
  frontBrakeShare: 0.7,
} as const;

interface WheelLoads {
  /** Normal force on the front and the rear wheel, N. */
  readonly frontLoad: number;
  readonly rearLoad: number;
  /** Deceleration at which the rear wheel leaves the ground on this slope, m/s². */
  readonly liftDeceleration: number;
}

export type BrakingResult =
  | (WheelLoads & {
      readonly status: 'settled' | 'topped-out' | 'bottomed';
      /** Fork travel, m. */
      readonly travel: number;
      /** Fork travel beyond that at which the head angle was given, m. */
      readonly dive: number;
      /** Head angle from the ground with that travel; steeper the deeper the fork dives. */
      readonly headAngle: Radian;
      /** Load on the spring along the fork axis, N. */
      readonly axialLoad: number;
    })
  | (WheelLoads & { readonly status: 'rear-wheel-lifts' | 'not-converged'; readonly message: string });

/** Steeper than any ground a bike rolls down, rad. */
const STEEPEST = (70 * Math.PI) / 180;
/** Above any rider's head, m. */
const HIGHEST_CENTRE = 3;
/** More than tyres allow, m/s². */
const HARDEST_BRAKING = 15;

/**
 * Fork travel (m) and head angle while braking steadily on a slope.
 *
 * F_x = M(a + g·sin φ); N_f = (M·g·cos φ·b + F_x·h_c)/L; load along the fork (N_f − m_u·g·cos φ)·sin θ +
 * (share·F_x − m_u(g·sin φ + a))·cos θ = F(s); θ = θ₀ + asin((s − s₀)·sin θ₀/L): docs/equations/answers.md#braking.
 * The rear stays at its ride height; settled and without friction, so a short stab of the brake dives less.
 * @throws SpringInputError for impossible geometry, masses or angles.
 */
export function braking(fork: AirSpring, input: BrakingCase): BrakingResult {
  validate(fork, input);
  const { totalMass, frontUnsprungMass, frontBrakeShare, slope, deceleration } = input;
  const loads = wheelLoads(input);
  if (loads.rearLoad < 0) {
    return { ...loads, status: 'rear-wheel-lifts', message: 'the rear wheel leaves the ground first' };
  }
  const along = GRAVITY * Math.sin(slope) + deceleration;
  const across = loads.frontLoad - frontUnsprungMass * GRAVITY * Math.cos(slope);
  const back = (frontBrakeShare * totalMass - frontUnsprungMass) * along;
  const axialLoad = (travel: number) => {
    const angle = headAngleAt(input, travel);
    return across * Math.sin(angle) + back * Math.cos(angle);
  };
  const { status, travel } = settle(fork, axialLoad);
  if (status === 'not-converged') {
    return { ...loads, status, message: 'no balance of fork and load was found' };
  }
  return {
    ...loads,
    status,
    travel,
    dive: travel - input.referenceTravel,
    headAngle: radian(headAngleAt(input, travel)),
    axialLoad: axialLoad(travel),
  };
}

function headAngleAt({ headAngle, referenceTravel, wheelbase }: BrakingCase, travel: number): number {
  return headAngle + Math.asin(((travel - referenceTravel) * Math.sin(headAngle)) / wheelbase);
}

function wheelLoads(input: BrakingCase): WheelLoads {
  const { totalMass, wheelbase, centreHeight, centreToRear, slope, deceleration } = input;
  const weight = totalMass * GRAVITY * Math.cos(slope);
  const inertia = totalMass * (deceleration + GRAVITY * Math.sin(slope));
  const frontLoad = (weight * centreToRear + inertia * centreHeight) / wheelbase;
  const atLift = (GRAVITY * Math.cos(slope) * (wheelbase - centreToRear)) / centreHeight;
  return {
    frontLoad,
    rearLoad: weight - frontLoad,
    liftDeceleration: atLift - GRAVITY * Math.sin(slope),
  };
}

function validate(fork: AirSpring, input: BrakingCase): void {
  requireNumber('totalMass', input.totalMass, 'kg', { above: 0, atMost: HEAVIEST });
  requireNumber('wheelbase', input.wheelbase, 'm', { above: fork.stroke });
  requireNumber('centreHeight', input.centreHeight, 'm', { above: 0, atMost: HIGHEST_CENTRE });
  requireNumber('centreToRear', input.centreToRear, 'm', { above: 0, below: input.wheelbase });
  requireNumber('frontUnsprungMass', input.frontUnsprungMass, 'kg', { atLeast: 0, below: input.totalMass });
  requireNumber('frontBrakeShare', input.frontBrakeShare, '1', { atLeast: 0, atMost: 1 });
  requireNumber('headAngle', input.headAngle, 'rad', { above: 0, atMost: Math.PI / 2 });
  requireNumber('referenceTravel', input.referenceTravel, 'm', { atLeast: 0, atMost: fork.stroke });
  requireNumber('slope', input.slope, 'rad', { atLeast: -STEEPEST, atMost: STEEPEST });
  requireNumber('deceleration', input.deceleration, 'm/s²', { atLeast: 0, atMost: HARDEST_BRAKING });
}
