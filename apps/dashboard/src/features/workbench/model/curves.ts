import { airSpring, settledCurve, type Scene } from '@loamledger/spring';
import { millimetresFromMetres } from '@loamledger/units';

export interface CurvePoint {
  readonly travelMm: number;
  readonly forceN: number;
  readonly stiffnessNPerMm: number;
}

export type CurveQuantity = 'forceN' | 'stiffnessNPerMm';

/** Every twentieth of the stroke falls on a point, and a line through them looks smooth. */
const POINT_COUNT = 121;
const NEWTON_PER_MILLIMETRE = 1e3; // N/m

/** Settled force and stiffness over the whole stroke. @throws SpringInputError for what cannot be. */
export const curveOf = ({ unit, fill }: Scene): readonly CurvePoint[] =>
  settledCurve(airSpring(unit, fill), POINT_COUNT).points.map(({ travel, force, stiffness }) => ({
    travelMm: millimetresFromMetres(travel),
    forceN: force,
    stiffnessNPerMm: stiffness / NEWTON_PER_MILLIMETRE,
  }));
