import { powerOfDifference, runsForPower } from '../plan/power.js';
import { FEWEST_DF } from './few-df.js';

/** Riders who ride every one of so many set-ups, below whom there is no verdict for riders in general. */
export const fewestRiders = (arms: number): number => 1 + Math.ceil(FEWEST_DF / Math.max(1, arms - 1));

/** No team has more riders; beyond it the answer is "more than". */
const MOST_RIDERS = 100;

/** What an undecided difference for riders in general rests on, on the log scale. */
export interface OpenRiders {
  se: number;
  df: number;
  riders: number;
  /** Of one comparison. */
  alpha: number;
  margin: number;
}

/**
 * Riders, these included and each riding as many runs, with whom a difference as large as the margin is found 8 times in
 * 10; null: more than a team has. The variance falls and degrees of freedom grow as riders do (hoenig2001: never for the
 * difference that was seen).
 */
export function ridersForDifference({ se, df, riders, alpha, margin }: OpenRiders): number | null {
  const needed = runsForPower((count) =>
    powerOfDifference(margin, se * Math.sqrt(riders), {
      unscaledSe: 1 / Math.sqrt(count),
      df: (df * (count - 1)) / (riders - 1),
      alpha,
    }),
  );
  return needed === null || needed > MOST_RIDERS ? null : Math.max(riders, needed);
}
