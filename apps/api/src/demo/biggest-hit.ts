import { travelForHeight } from '@loamledger/spring';
import type { End } from '../modules/suspension/end-inputs.js';
import { BIKES } from './bikes.js';
import { RIDERS, type RiderKey } from './people.js';
import type { SeededRandom } from './random.js';
import type { RunCase } from './run-case.js';
import { TRACKS, type TrackKey } from './tracks.js';
import { trueEnd } from './true-ends.js';

/** What the biggest hit of a run used of one end. */
export interface EndUse {
  /** Travel over the stroke. */
  readonly fraction: number;
  readonly isBottomed: boolean;
}

/** What it used of both. */
export type BikeUse = Readonly<Record<End, EndUse>>;

/** Log of how much harder than their usual a rider hits a track. */
export type Habits = (rider: RiderKey, track: TrackKey) => number;

// Invented: sizes that a small team may well meet, none of them measured. In log hit height where nothing else is said.

/** What the ground does to speed, and so to the hits. */
const CONDITION_LOG_HIT = { dry: 0, dusty: -0.03, damp: -0.05, wet: -0.12, muddy: -0.18 } as const;
const RIDER_ON_TRACK_SD = 0.06;
/** Part of the run-to-run variance that both ends of the bike share. */
const SHARED_VARIANCE = 0.5;

/** Draws the habits of every rider on every track. */
export function drawHabits(random: SeededRandom): Habits {
  const riders = Object.keys(RIDERS) as RiderKey[];
  const tracks = Object.keys(TRACKS) as TrackKey[];
  const drawn = new Map(
    riders.flatMap((rider) => tracks.map((track) => [`${rider} ${track}`, random.normal(RIDER_ON_TRACK_SD)])),
  );
  return (rider, track) => drawn.get(`${rider} ${track}`) ?? 0;
}

/** Draws the biggest hit of a run at both ends, and lets the engine find the travel it used. */
export function biggestHit(random: SeededRandom, habits: Habits, run: RunCase): BikeUse {
  const shared = random.normal(1);
  return {
    fork: useOf('fork', shared, random, habits, run),
    shock: useOf('shock', shared, random, habits, run),
  };
}

function useOf(end: End, shared: number, random: SeededRandom, habits: Habits, run: RunCase): EndUse {
  const { day, ambient, bike, setUp } = run;
  const { medianHit, logRunSd } = TRACKS[day.track].truth;
  const { rider } = BIKES[bike];
  const scatter = Math.sqrt(SHARED_VARIANCE) * shared + random.normal(Math.sqrt(1 - SHARED_VARIANCE));
  const logHit =
    Math.log(medianHit[end]) +
    RIDERS[rider].truth.logHit +
    habits(rider, day.track) +
    CONDITION_LOG_HIT[day.weather.condition] +
    logRunSd * scatter;
  const { spring, end: sprung } = trueEnd(bike, end, setUp[end], ambient);
  const { status, fraction } = travelForHeight(spring, sprung, Math.exp(logHit));
  return { fraction, isBottomed: status === 'bottomed' };
}
