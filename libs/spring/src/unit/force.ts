import { chamberEnergy, chamberForce, chamberStiffness, ISOTHERMAL, pressureAt } from '../gas/chamber.js';
import type { AirSpring } from './air-spring.js';

/** Force of the bottom-out bumper at a travel, N: F_bm·(δ/L_b)², δ = s − (S − L_b); 0 before contact. */
function bumperForce(spring: AirSpring, travel: number): number {
  const depth = travel - spring.bumperContact;
  return depth > 0 ? bumperCurvature(spring) * depth ** 2 : 0;
}

/** F_bm/L_b², N/m²; 0 without a bumper. */
export function bumperCurvature({ unit }: AirSpring): number {
  return unit.bumperLength === 0 ? 0 : unit.bumperEndForce / unit.bumperLength ** 2;
}

/** Energy in the bumper at a travel, J: the integral of its force. */
export function bumperEnergy(spring: AirSpring, travel: number): number {
  const depth = travel - spring.bumperContact;
  return depth > 0 ? (bumperCurvature(spring) * depth ** 3) / 3 : 0;
}

/** Gas and bumper force against compression for one polytropic exponent, N: docs/equations/spring.md#force. */
export function polytropicForce(spring: AirSpring, travel: number, exponent: number): number {
  const ambient = spring.ambientPressure;
  return (
    chamberForce(spring.positive, ambient, travel, exponent) +
    chamberForce(spring.negative, ambient, travel, exponent) +
    chamberForce(spring.lowerLeg, ambient, travel, exponent) +
    bumperForce(spring, travel)
  );
}

/** Gas and bumper stiffness for one polytropic exponent, N/m. */
export function polytropicStiffness(spring: AirSpring, travel: number, exponent: number): number {
  const depth = Math.max(0, travel - spring.bumperContact);
  return (
    chamberStiffness(spring.positive, travel, exponent) +
    chamberStiffness(spring.negative, travel, exponent) +
    chamberStiffness(spring.lowerLeg, travel, exponent) +
    2 * bumperCurvature(spring) * depth
  );
}

/** Gas and bumper energy from full extension for one polytropic exponent, J. */
export function polytropicEnergy(spring: AirSpring, travel: number, exponent: number): number {
  const ambient = spring.ambientPressure;
  return (
    chamberEnergy(spring.positive, ambient, travel, exponent) +
    chamberEnergy(spring.negative, ambient, travel, exponent) +
    chamberEnergy(spring.lowerLeg, ambient, travel, exponent) +
    bumperEnergy(spring, travel)
  );
}

/**
 * Settled (isothermal) force of gas and bumper against compression, N.
 *
 * F = Σ (p_i − p_a)·a_i + F_bumper; docs/equations/spring.md#force. Friction and damping are left out.
 * @param travel s, m; 0…stroke. Beyond the stroke the formulas go on until a chamber is full.
 */
export function springForce(spring: AirSpring, travel: number): number {
  return polytropicForce(spring, travel, ISOTHERMAL);
}

/** Settled (isothermal) stiffness of gas and bumper along the travel, N/m; dF/ds, > 0. */
export function springStiffness(spring: AirSpring, travel: number): number {
  return polytropicStiffness(spring, travel, ISOTHERMAL);
}

/** Energy to press the spring slowly (isothermally) from full extension to a travel, J; ∫F ds. */
export function storedEnergy(spring: AirSpring, travel: number): number {
  return polytropicEnergy(spring, travel, ISOTHERMAL);
}

/** Absolute pressures of the chambers at a travel, Pa, settled (isothermal) or for another polytropic exponent. */
export function chamberPressures(
  spring: AirSpring,
  travel: number,
  exponent: number = ISOTHERMAL,
): { readonly positive: number; readonly negative: number; readonly lowerLeg: number } {
  return {
    positive: pressureAt(spring.positive, travel, exponent),
    negative: pressureAt(spring.negative, travel, exponent),
    lowerLeg: pressureAt(spring.lowerLeg, travel, exponent),
  };
}
