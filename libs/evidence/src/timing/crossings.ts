import { planeAt, type Gate, type GatePosition, type Place } from './gate-plane.js';

/** Where a receiver was, and when. */
export interface Fix extends Place {
  /** s, on any clock that all fixes of a recording share; rising from fix to fix. */
  readonly time: number;
}

/** The moment at which a recording passes a gate. */
export interface Crossing {
  /** s, on the clock of the fixes. */
  readonly time: number;
  /** Standard uncertainty of the moment, s; > 0. */
  readonly sd: number;
}

/** Two fixes further apart than this say nothing about when a gate between them was passed, s (common practice, no source). */
const LONGEST_GAP = 10;
/** Standard deviation of a rider's acceleration along the track between two fixes, m/s² (common practice, no source). */
const ACCELERATION_SD = 2;

/**
 * Every moment at which the recording passes the gate, either way, in the order of time. Between two fixes on either side
 * the receiver is taken to move straight and at a constant speed; the path must pass between the ends of the gate.
 *
 * The uncertainty has two parts, taken together as independent ones are. The position: a receiver's error changes over
 * tens of seconds, so that the two fixes share it, and an error of `positionSd` across the gate moves the moment by that
 * over the speed; where the errors of the two fixes were independent it would be less, down to 0.71 of it. The sampling:
 * a speed that changes steadily by a between fixes T apart leaves the straight line by a f(1 − f) T²/2 at the share f of
 * the way (the error of linear interpolation, e.g. Dahlquist & Björck, Numerical Methods, 1974, sec. 4.3), over the speed.
 *
 * @param segments Fixes without a break between them, in the order of time.
 * @param positionSd Standard uncertainty of a position along one axis, m; > 0.
 */
export function crossings(segments: readonly (readonly Fix[])[], gate: Gate, positionSd: number): Crossing[] {
  const { length, positionOf } = planeAt(gate);
  return segments.flatMap((fixes) => {
    const found: Crossing[] = [];
    let before: { fix: Fix; position: GatePosition } | undefined;
    for (const fix of fixes) {
      const position = positionOf(fix);
      const crossing = before && between(before, { fix, position }, length, positionSd);
      if (crossing) found.push(crossing);
      before = { fix, position };
    }
    return found;
  });
}

interface Placed {
  readonly fix: Fix;
  readonly position: GatePosition;
}

function between(first: Placed, second: Placed, length: number, positionSd: number): Crossing | undefined {
  const [start, end] = [first.position, second.position];
  // A fix on the gate is on its far side, so that it is passed once.
  if (start.beyond >= 0 === end.beyond >= 0) return undefined;
  const gap = second.fix.time - first.fix.time;
  if (gap > LONGEST_GAP) return undefined;
  const share = start.beyond / (start.beyond - end.beyond);
  const along = start.along + share * (end.along - start.along);
  if (along < 0 || along > length) return undefined;
  const speed = Math.abs(end.beyond - start.beyond) / gap;
  const offLine = (ACCELERATION_SD * share * (1 - share) * gap ** 2) / 2;
  return { time: first.fix.time + share * gap, sd: Math.hypot(positionSd, offLine) / speed };
}
