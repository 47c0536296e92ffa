import { allowedSetUps } from '../fork-end.js';
import type { Adviser, SetUp, TeamRecords } from '../contract.js';
import { HARD_BEYOND_USUAL } from './hard-runs.js';

/** A ring this close to what is wanted changes nothing, m. */
const CLOSE_ENOUGH = 0.006;
/** psi; ridden where no further spacer may go in or out. */
const PRESSURE_STEP = 3;

/**
 * A rider who changes one thing at a time by what the last ring showed: a spacer in where too little was left, one out
 * where too much was; pressure where the spacers are at their limit. They know exactly what they want.
 */
export function byFeel(records: TeamRecords, wantedReserve: number): Adviser {
  const fork = records.forks.get(records.riderId);
  const altitude = records.altitudes.get(records.trackId);
  if (!fork || altitude === undefined) throw new Error('neither fork nor track in the records');
  const allowed = allowedSetUps(fork, altitude);
  const { stroke } = fork.unit;

  const changed = (setUp: SetUp, direction: 1 | -1): SetUp => {
    const spacers = setUp.spacers + direction;
    // A spacer moves the sag a little: the pressure of the band nearest to the present one goes with it.
    const withSpacers = nearestPressure(allowed, spacers, setUp.pressure);
    return (
      withSpacers ??
      nearestPressure(allowed, setUp.spacers, setUp.pressure + direction * PRESSURE_STEP) ??
      setUp
    );
  };

  return (runs) => {
    const last = runs.findLast(({ riderId }) => riderId === records.riderId);
    if (!last) return { next: records.startSetUp, best: records.startSetUp };
    const surplus = stroke - last.travelUsed - (wantedReserve + HARD_BEYOND_USUAL);
    const next = Math.abs(surplus) <= CLOSE_ENOUGH ? last.setUp : changed(last.setUp, surplus < 0 ? 1 : -1);
    return { next, best: next };
  };
}

/** The allowed set-up with so many spacers whose pressure is nearest; undefined where there is none. */
const nearestPressure = (allowed: readonly SetUp[], spacers: number, pressure: number): SetUp | undefined =>
  allowed
    .filter((setUp) => setUp.spacers === spacers)
    .toSorted((a, b) => Math.abs(a.pressure - pressure) - Math.abs(b.pressure - pressure))[0];
