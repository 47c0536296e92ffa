import { ForceWatch } from '../frame/force-watch.js';
import type { ChamberState } from '../frame/hit-motion.js';
import { Hit, type HitEnd } from '../frame/hit.js';
import { GRAVITY, requireSprungEnd, type SprungEnd } from '../frame/sprung-end.js';
import { requireNumber } from '../numerics/input-error.js';
import type { AirSpring } from '../unit/air-spring.js';
import { bumperEnergy } from '../unit/force.js';

/** Where the energy of a landing went, J; residual = input − all the rest − the kinetic energy left at its end. */
export interface EnergyBalance {
  readonly input: number;
  readonly gas: number;
  readonly damper: number;
  readonly bumper: number;
  readonly friction: number;
  readonly residual: number;
}

export interface LandingResult {
  readonly status: HitEnd;
  /** Greatest travel along the fork axis or the shock shaft, m. */
  readonly peakTravel: number;
  /** Time from touchdown to it, s. */
  readonly peakTime: number;
  /** Greatest force of gas, bumper, damper and friction up to then, N. */
  readonly peakForce: number;
  /** Shaft speed at the end, m/s; 0 at a peak. */
  readonly endSpeed: number;
  /** Gas of each chamber at the end. */
  readonly chambers: Readonly<Record<'positive' | 'negative' | 'lowerLeg', ChamberState>>;
  /** Force of the gas at the end, N. */
  readonly gasForce: number;
  readonly energyBalance: EnergyBalance;
  /** Energy that the spring could not take before the end of the stroke, J; 0 unless bottomed. */
  readonly leftOverEnergy: number;
  readonly steps: number;
  readonly evaluations: number;
  readonly message: string;
}

export interface LandingOptions {
  /** Local error that a step may make, relative to stroke, entry speed, temperature and input energy. */
  readonly relativeTolerance?: number;
}

/** Keeps the peak travel within about 1e-7 m and the peak time within 1e-6 s over the reference landings. */
export const DEFAULT_TOLERANCE = 1e-8;
const TOLERANCE = { atLeast: 1e-13, atMost: 1e-2 };
/** No rider drops higher and rides on, m; keeps absurd input out. */
export const HIGHEST_DROP = 20;

const MESSAGES: Record<HitEnd, string> = {
  peak: 'came to rest within the stroke',
  bottomed: 'reached the end of the stroke with speed left',
  'not-converged':
    'the step size vanished or the steps ran out before the peak; the state is where it stopped',
};

/**
 * Landing of one end from a drop to flat ground: peak travel in m, with time, force and energies.
 *
 * m(LR²·s̈ + LR·LR′·ṡ²) = m·g·LR − F(s, ṡ), s(0) = 0, ṡ(0) = √(2gh)/LR(0), until ṡ = 0 or s = S;
 * docs/equations/frame.md#motion. One degree of freedom: no tyre, no pitch, no separate rider, so h is an equivalent.
 * @param height h of the drop, m; 0 is a load put on suddenly.
 * @throws SpringInputError for a height outside 0…20 m or an end that cannot be.
 */
export function landing(
  spring: AirSpring,
  end: SprungEnd,
  height: number,
  options: LandingOptions = {},
): LandingResult {
  requireSprungEnd(end);
  requireNumber('height', height, 'm', { atLeast: 0, atMost: HIGHEST_DROP });
  const tolerance = options.relativeTolerance ?? DEFAULT_TOLERANCE;
  requireNumber('relativeTolerance', tolerance, '1', TOLERANCE);
  const hit = new Hit(spring, end, true);
  const watch = new ForceWatch(hit);
  const status = hit.run(height, tolerance, watch);
  const { motion, stepper } = hit;
  const peakTravel = motion.travel.value;
  // At a peak the speed is 0 but for rounding, or that at which a creeping end counts as at rest.
  const isPeak = status === 'peak';
  const kineticEnergy = (end.sprungMass * (end.leverage.ratio(peakTravel) * motion.speed.value) ** 2) / 2;
  return {
    status,
    peakTravel,
    peakTime: stepper.time,
    peakForce: watch.greatest,
    endSpeed: isPeak ? 0 : motion.speed.value,
    chambers: motion.chambers(),
    gasForce: motion.gasForce(),
    energyBalance: balance(hit, height, kineticEnergy),
    leftOverEnergy: isPeak ? 0 : kineticEnergy,
    steps: stepper.steps,
    evaluations: stepper.evaluations,
    message: MESSAGES[status],
  };
}

function balance(hit: Hit, height: number, kineticEnergy: number): EnergyBalance {
  const { motion, spring, end } = hit;
  const travel = motion.travel.value;
  const input = end.sprungMass * GRAVITY * (height + end.leverage.wheelTravel(travel));
  const gas = motion.gasWork.value;
  const damper = motion.damperWork.value;
  const bumper = bumperEnergy(spring, travel);
  const friction = spring.unit.sealFriction * travel;
  return {
    input,
    gas,
    damper,
    bumper,
    friction,
    residual: input - gas - damper - bumper - friction - kineticEnergy,
  };
}
