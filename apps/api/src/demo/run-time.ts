import { sag } from '@loamledger/spring';
import { ENDS } from '../modules/suspension/end-inputs.js';
import type { BikeUse } from './biggest-hit.js';
import { BIKES } from './bikes.js';
import { RIDERS } from './people.js';
import type { SeededRandom } from './random.js';
import type { RunCase } from './run-case.js';
import { TRACKS } from './tracks.js';
import { trueEnd } from './true-ends.js';

// Invented, as shares of the time of a practised run where nothing else is said.

const CONDITION_TIME = { dry: 1, dusty: 1.008, damp: 1.015, wet: 1.04, muddy: 1.08 } as const;
/** Standard deviation of log time between runs alike in everything. */
const LOG_TIME_SD = 0.0135;
/** Lost on the first run of a day; of which each further run keeps a part. */
const LEARNING = { first: 0.03, kept: 0.55 } as const;
const TIRING_A_RUN = 0.0012;
/** Lost by a bottom-out, and by each per cent of sag off the middle of the usual band. */
const SET_UP_LOSS = { bottomed: 0.005, offSagPct: 0.0006 } as const;
const USUAL_SAG_PCT = { fork: 17.5, shock: 27.5 } as const;
const PER_CENT = 100;

/** Draws the time of a run without mishap, s: track, rider, ground, learning, tiring, set-up and scatter. */
export function runTime(random: SeededRandom, run: RunCase, use: BikeUse): number {
  const { day, bike, round } = run;
  const learning = LEARNING.first * LEARNING.kept ** round;
  return (
    TRACKS[day.track].truth.time *
    RIDERS[BIKES[bike].rider].truth.pace *
    CONDITION_TIME[day.weather.condition] *
    (1 + learning + TIRING_A_RUN * round + setUpLoss(run, use)) *
    Math.exp(random.normal(LOG_TIME_SD))
  );
}

function setUpLoss({ bike, setUp, ambient }: RunCase, use: BikeUse): number {
  return ENDS.reduce((loss, end) => {
    const { spring, end: sprung } = trueEnd(bike, end, setUp[end], ambient);
    const offPct = Math.abs(sag(spring, sprung).fraction * PER_CENT - USUAL_SAG_PCT[end]);
    return loss + SET_UP_LOSS.offSagPct * offPct + (use[end].isBottomed ? SET_UP_LOSS.bottomed : 0);
  }, 0);
}
