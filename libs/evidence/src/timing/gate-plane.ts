import type { Radian } from '@loamledger/units';

/** A place on the ground by latitude and longitude, rad. */
export interface Place {
  readonly latitude: Radian;
  readonly longitude: Radian;
}

/** A line across a track, from one side to the other. */
export interface Gate {
  readonly from: Place;
  readonly to: Place;
}

/** Mean radius of the earth, m: (2a + b)/3 of the ellipsoid (Moritz, Geodetic Reference System 1980, J. Geodesy 74, 2000). */
const EARTH_RADIUS = 6_371_008.8;

/** Where a place is as seen from a gate, m. */
export interface GatePosition {
  /** Along the gate from its first end. */
  readonly along: number;
  /** Beyond the gate, to one side of it; negative on the other. */
  readonly beyond: number;
}

/** Length of the gate, m. */
export const gateLength = ({ from, to }: Gate): number => Math.hypot(...metresFrom(from, to));

/** A gate with the plane around it. */
export interface GatePlane {
  /** Of the gate, m. */
  readonly length: number;
  readonly positionOf: (place: Place) => GatePosition;
}

/**
 * The plane that touches the ground at the gate. The earth's radii of curvature differ from the mean by less
 * than 0.7 %: lengths are off by as much, moments of crossing are not, since they rest on the ratio of two distances.
 */
export function planeAt(gate: Gate): GatePlane {
  const [east, north] = metresFrom(gate.from, gate.to);
  const length = Math.hypot(east, north);
  const positionOf = (place: Place): GatePosition => {
    const [x, y] = metresFrom(gate.from, place);
    return { along: (x * east + y * north) / length, beyond: (x * north - y * east) / length };
  };
  return { length, positionOf };
}

/** East and north of `place` from `origin`, m. */
function metresFrom(origin: Place, place: Place): [east: number, north: number] {
  // The short way round, also over the line where the date changes.
  const turns = Math.round((place.longitude - origin.longitude) / (2 * Math.PI));
  const east = place.longitude - origin.longitude - turns * 2 * Math.PI;
  return [east * Math.cos(origin.latitude) * EARTH_RADIUS, (place.latitude - origin.latitude) * EARTH_RADIUS];
}
