import { requireBetween } from '../errors.js';
import { crossings, type Fix } from './crossings.js';
import { gateLength, type Gate } from './gate-plane.js';

export interface TimedRun {
  /** When the start gate was passed, s, on the clock of the fixes. */
  readonly startedAt: number;
  /** s; > 0. */
  readonly time: number;
  /** Standard uncertainty of the time, s; > 0. */
  readonly timeSd: number;
}

interface Recording {
  /** Fixes without a break between them; times rise from fix to fix and from segment to segment. */
  readonly segments: readonly (readonly Fix[])[];
  readonly start: Gate;
  readonly finish: Gate;
  /** Standard uncertainty of a position along one axis, m. */
  readonly positionSd: number;
  /** A run takes no longer, s. */
  readonly longest: number;
}

/** A gate shorter than a track is wide, or longer than any line across one, was mistyped, m. */
export const GATE_LENGTH = { least: 2, most: 500 };
/** Beyond it a recording is of no use for timing, m. */
const POSITION_SD = { least: 0.01, most: 50 };

/**
 * The runs in a recording: each from the last time that the start gate was passed before the finish gate was, to the
 * first time that the finish gate was passed after it. So neither waiting about at the start nor a way up through both
 * gates makes a run. Start and finish are minutes apart, and their errors independent.
 *
 * @throws EvidenceInputError where a gate or the uncertainty of a position is beyond what can be.
 */
export function runsBetween({ segments, start, finish, positionSd, longest }: Recording): TimedRun[] {
  requireBetween('positionSd', positionSd, 'm', POSITION_SD.least, POSITION_SD.most);
  for (const [name, gate] of Object.entries({ start, finish })) {
    const { least, most } = GATE_LENGTH;
    requireBetween(`length of the ${name} gate`, gateLength(gate), 'm', least, most);
  }
  const passed = [
    ...crossings(segments, start, positionSd).map((at) => ({ ...at, isStart: true })),
    ...crossings(segments, finish, positionSd).map((at) => ({ ...at, isStart: false })),
  ].toSorted((a, b) => a.time - b.time);
  const runs: TimedRun[] = [];
  let begun: (typeof passed)[number] | undefined;
  for (const at of passed) {
    if (at.isStart) {
      begun = at;
      continue;
    }
    const time = begun === undefined ? 0 : at.time - begun.time;
    if (begun !== undefined && time > 0 && time <= longest) {
      runs.push({ startedAt: begun.time, time, timeSd: Math.hypot(begun.sd, at.sd) });
    }
    begun = undefined;
  }
  return runs;
}
