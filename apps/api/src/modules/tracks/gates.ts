import { GATE_LENGTH, gateLength, type Gate } from '@loamledger/evidence';
import { degreesFromRadian, radianFromDegrees } from '@loamledger/units';
import { InvalidField } from '../../platform/errors/refusal.js';
import type { GateDto } from './tracks.dto.js';

/** The gate as it is stored, rad. @throws InvalidField where no line across a track is so short or so long. */
export function gateOf(field: string, given: GateDto | null | undefined): Gate | null {
  if (given == null) return null;
  const gate: Gate = {
    from: placeOf(given.fromLatitudeDeg, given.fromLongitudeDeg),
    to: placeOf(given.toLatitudeDeg, given.toLongitudeDeg),
  };
  refuseGateLength(field, gate);
  return gate;
}

/** @throws InvalidField */
export function refuseGateLength(field: string, gate: Gate | null): void {
  if (gate === null) return;
  const length = gateLength(gate);
  const { least, most } = GATE_LENGTH;
  if (length >= least && length <= most) return;
  throw new InvalidField(
    'track.gate-length',
    field,
    `${length.toFixed(1)} m`,
    `a line of ${least} to ${most} m across the track`,
  );
}

export const gateAnswer = (gate: Gate | null): GateDto | null =>
  gate && {
    fromLatitudeDeg: degreesFromRadian(gate.from.latitude),
    fromLongitudeDeg: degreesFromRadian(gate.from.longitude),
    toLatitudeDeg: degreesFromRadian(gate.to.latitude),
    toLongitudeDeg: degreesFromRadian(gate.to.longitude),
  };

const placeOf = (latitudeDeg: number, longitudeDeg: number) => ({
  latitude: radianFromDegrees(latitudeDeg),
  longitude: radianFromDegrees(longitudeDeg),
});
