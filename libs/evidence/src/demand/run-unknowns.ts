import { NO_TRACK } from './component.js';
import type { DemandFit } from './fit.js';
import { REFERENCE_CONDITION } from './reading.js';

/** A run in question: any rider, any track, any ground; left out means a new rider, a new track, the reference ground. */
export interface RunOf {
  riderId?: string;
  trackId?: string;
  condition?: string;
}

/** Unknowns of a fit that add up to the level of a run, and what the fit has not seen of it. */
interface RunUnknowns {
  /** Ascending. */
  unknowns: number[];
  /** Index of the track, NO_TRACK for an unseen one. */
  track: number;
  unseen: { track: boolean; rider: boolean; condition: boolean };
}

/** Finds a run's unknowns in a fit: mu (0), tracks, riders, conditions in the order of the fit's lists. */
export function unknownsOfRun(
  fit: Pick<DemandFit, 'tracks' | 'riders' | 'conditions'>,
  { riderId, trackId, condition }: RunOf,
): RunUnknowns {
  const track = fit.tracks.findIndex(({ id }) => id === trackId);
  const rider = fit.riders.findIndex(({ id }) => id === riderId);
  const ground = fit.conditions.findIndex(({ id }) => id === condition);
  const isReference = condition === undefined || condition === REFERENCE_CONDITION;
  const firstRider = 1 + fit.tracks.length;
  const unknowns = [0];
  if (track >= 0) unknowns.push(1 + track);
  if (rider >= 0) unknowns.push(firstRider + rider);
  if (ground >= 0) unknowns.push(firstRider + fit.riders.length + ground);
  return {
    unknowns,
    track: track < 0 ? NO_TRACK : track,
    unseen: { track: track < 0, rider: rider < 0, condition: ground < 0 && !isReference },
  };
}
