import { braking, REFERENCE_BRAKING, type AirSpring, type BrakingResult } from '@loamledger/spring';
import { metresFromMillimetres, radianFromDegrees } from '@loamledger/units';
import type { BikeEnds } from '../api/bike-ends.js';

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
    headAngle: radianFromDegrees(headAngleDeg),
    referenceTravel: 0,
    ...REFERENCE_BRAKING,
  });
}
