import { NO_TRACK, type LevelParts } from './component.js';
import type { DemandFit } from './fit.js';
import { REFERENCE_CONDITION } from './reading.js';

/** A run in question: any rider, any track, any ground; left out means a new rider, a new track, the reference ground. */
export interface RunOf {
  riderId?: string;
  trackId?: string;
  condition?: string;
}

/** What adds up to the level of a run, and what the fit has not seen of it. */
export interface RunUnknowns extends LevelParts {
  unseen: { track: boolean; rider: boolean; riderOnTrack: boolean; condition: boolean };
}

/** The lists of a fit that number its unknowns. */
export type FitLevels = Pick<DemandFit, 'tracks' | 'riders' | 'conditions' | 'pairs'>;

/** Where a run's rider, track, pair of the two and ground stand in a fit's lists; −1 for what is not there. */
export function placesOf(
  fit: FitLevels,
  { riderId, trackId, condition }: RunOf,
): { rider: number; track: number; pair: number; ground: number } {
  const track = fit.tracks.findIndex(({ id }) => id === trackId);
  const rider = fit.riders.findIndex(({ id }) => id === riderId);
  return {
    track,
    rider,
    pair: fit.pairs.findIndex((pair) => pair.track === track && pair.rider === rider),
    ground: fit.conditions.findIndex(({ id }) => id === condition),
  };
}

/** Finds a run's unknowns in a fit: mu (0), tracks, riders, conditions in the order of the fit's lists. */
export function unknownsOfRun(fit: FitLevels, run: RunOf): RunUnknowns {
  const { track, rider, pair, ground } = placesOf(fit, run);
  const unknownsOf = (condition: number): number[] => {
    const unknowns = [0];
    if (track >= 0) unknowns.push(1 + track);
    if (rider >= 0) unknowns.push(1 + fit.tracks.length + rider);
    if (condition >= 0) unknowns.push(1 + fit.tracks.length + fit.riders.length + condition);
    return unknowns;
  };
  const isReference = run.condition === undefined || run.condition === REFERENCE_CONDITION;
  const found = fit.pairs[pair];
  return {
    unknowns: unknownsOf(ground),
    track: track < 0 ? NO_TRACK : track,
    pair: found === undefined ? null : { index: pair, cells: found.grounds.map(unknownsOf) },
    unseen: {
      track: track < 0,
      rider: rider < 0,
      riderOnTrack: found === undefined,
      condition: ground < 0 && !isReference,
    },
  };
}
