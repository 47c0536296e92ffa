import type { RatingsDto } from '../modules/runs/run-input.dto.js';
import { ENDS } from '../modules/suspension/end-inputs.js';
import type { BikeUse } from './biggest-hit.js';
import type { SeededRandom } from './random.js';
import { BOTTOMED_NOTES, DEEP_NOTES, OTHER_NOTES, SHALLOW_NOTES } from './run-words.js';

/** From here on a hit feels deep, up to here shallow; share of the stroke. */
const DEEP = 0.93;
const SHALLOW = 0.7;
const RATING = { least: 1, most: 5 } as const;
const RATING_SD = 0.6;
/** Runs after which a rider gives one point less for hands and arms. */
const RUNS_A_FATIGUE_POINT = 3;
const GOOD = 4;

/** Draws how the run felt: support falls with deep hits, comfort with shallow ones, freshness with every run. */
export function ratingsOf(random: SeededRandom, use: BikeUse, round: number): RatingsDto {
  const worst = Math.max(use.fork.fraction, use.shock.fraction);
  const lost = ENDS.filter((end) => use[end].isBottomed).length + (worst > DEEP ? 1 : 0);
  const rated = (mean: number) =>
    Math.min(RATING.most, Math.max(RATING.least, Math.round(mean + random.normal(RATING_SD))));
  return {
    support: rated(RATING.most - lost),
    comfort: rated(worst < SHALLOW ? GOOD - 1 : GOOD),
    rideHeight: rated(GOOD - lost / 2),
    fatigue: rated(RATING.most - round / RUNS_A_FATIGUE_POINT),
  };
}

/** Draws a note that fits what the hit used. */
export function noteOf(random: SeededRandom, use: BikeUse): string {
  const worst = Math.max(use.fork.fraction, use.shock.fraction);
  if (ENDS.some((end) => use[end].isBottomed)) return random.pick(BOTTOMED_NOTES);
  if (worst > DEEP) return random.pick(DEEP_NOTES);
  return random.pick(worst < SHALLOW ? SHALLOW_NOTES : OTHER_NOTES);
}
