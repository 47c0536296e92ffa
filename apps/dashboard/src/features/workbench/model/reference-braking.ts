import { braking, type AirSpring, type BrakingResult } from '@loamledger/spring';
import { metresFromMillimetres, radian, radianFromDegrees } from '@loamledger/units';
import type { BikeEnds } from '../api/bike-ends.js';

const GRAVITY = 9.80665; // m/s², 3rd CGPM, 1901

/**
 * The braking that every set-up is compared at: hard but steady on level ground, short of lifting the rear wheel of
 * most bikes, most of it by the front wheel. Assumed; common practice, no source.
 */
export const REFERENCE_BRAKING = { decelerationG: 0.5, frontSharePct: 70 };
const PER_CENT = 100;

/**
 * Fork under the reference braking. The head angle is taken to be that of the fork at full extension, as frames are
 * drawn, so that `dive` is the whole travel used (m).
 */
export function referenceBraking(
  fork: AirSpring,
  headAngleDeg: number,
  bike: BikeEnds['braking'],
): BrakingResult {
  return braking(fork, {
    totalMass: bike.totalMassKg,
    wheelbase: metresFromMillimetres(bike.wheelbaseMm),
    centreHeight: metresFromMillimetres(bike.centreOfMassHeightMm),
    centreToRear: metresFromMillimetres(bike.centreOfMassToRearMm),
    frontUnsprungMass: bike.frontUnsprungMassKg,
    frontBrakeShare: REFERENCE_BRAKING.frontSharePct / PER_CENT,
    headAngle: radianFromDegrees(headAngleDeg),
    referenceTravel: 0,
    slope: radian(0),
    deceleration: REFERENCE_BRAKING.decelerationG * GRAVITY,
  });
}
