import type { EndReadingInputDto, RunInputDto, VoidInputDto } from '../modules/runs/run-input.dto.js';
import type { End } from '../modules/suspension/end-inputs.js';
import { biggestHit, drawHabits, type EndUse, type Habits } from './biggest-hit.js';
import { BIKES, type BikeKey } from './bikes.js';
import { noteOf, ratingsOf } from './impressions.js';
import { RIDERS } from './people.js';
import { SeededRandom } from './random.js';
import type { RunCase } from './run-case.js';
import { runTime } from './run-time.js';
import { MISHAPS, UNTIMED_NOTE } from './run-words.js';
import { sectionTimes } from './section-times.js';
import type { DemoDay, Stint } from './scenario.js';
import { SetUpsInForce } from './set-ups-in-force.js';
import { ambientOf } from './true-ends.js';
import { UNITS } from './units.js';

/** A run as its rider enters it, and what the mechanic finds out about it afterwards. */
export interface SimulatedRun {
  readonly bike: BikeKey;
  readonly input: Omit<RunInputDto, 'bikeId' | 'sessionId'>;
  readonly voidedLater: VoidInputDto | null;
}

/** A day of the season with its runs in the order in which they were ridden. */
export interface SimulatedDay {
  readonly day: DemoDay;
  readonly runs: readonly SimulatedRun[];
}

// Invented, as everything here.

/** Standard deviation of a ring reading, mm. */
const RING_ERROR_SD = 2;
/** Standard deviation of the gauge from one filling to the next, psi. */
const GAUGE_ERROR_SD = 0.8;
const CHANCE = {
  mishap: 0.07,
  mishapEnteredByRider: 0.6,
  ringForgotten: 0.04,
  timeMissed: 0.05,
  /** Of a session in which somebody stands at the ends of the sections. */
  sectionsTimed: 0.6,
  bottomOutSaid: 0.85,
  noBottomOutSaid: 0.5,
  rated: 0.6,
  noted: 0.25,
} as const;
/** Time that a mishap costs where the clock was stopped all the same, s. */
const MISHAP_TIME = { least: 4, spread: 16 } as const;

/** Tells the random numbers of sections from those of runs. */
const SECTIONS = 0x5ec7;
const FIRST_START_MINUTE = 540;
const MINUTES_A_RUN = 24;
const MINUTES_BETWEEN_RIDERS = 4;
const MINUTE_MS = 60_000;

/**
 * Every run of the season. The same seed gives the same runs. The travel of each hit is the engine's, with the
 * true figures of the bike, which the tool is never told.
 */
export function simulateSeason(season: readonly DemoDay[], seed: number): readonly SimulatedDay[] {
  const random = new SeededRandom(seed);
  const setUps = new SetUpsInForce(() => random.normal(GAUGE_ERROR_SD));
  const habits = drawHabits(random);
  // Numbers of their own, so that what is added to the demo changes nothing else in it.
  const atSections = new SeededRandom(seed ^ SECTIONS);
  return season.map((day) => {
    for (const change of day.changes) setUps.apply(change);
    const ambient = ambientOf(day);
    const runs = inOrder(day).map(({ stint, round, isShuttle }) => {
      const run = { day, ambient, bike: stint.bike, setUp: setUps.of(stint.bike), round };
      return simulateRun(random, habits, run, { place: day.stints.indexOf(stint), isShuttle });
    });
    return {
      day,
      runs: atSections.chance(CHANCE.sectionsTimed) ? runs.map(withSections(atSections, day)) : runs,
    };
  });
}

/** Adds the times of sections to a run that nothing spoilt. */
const withSections =
  (random: SeededRandom, { track }: DemoDay) =>
  (run: SimulatedRun): SimulatedRun => {
    const { timeS, spoilt } = run.input;
    if (timeS == null || spoilt || run.voidedLater) return run;
    return { ...run, input: { ...run.input, sectionTimes: sectionTimes(random, track, timeS) } };
  };

/** The runs of a day: round after round, in each the riders one after another, each on one bike at a time. */
function inOrder(day: DemoDay): { stint: Stint; round: number; isShuttle: boolean }[] {
  return day.stints
    .flatMap((stint) => {
      const first = roundsBefore(day, stint);
      return Array.from({ length: stint.runs }, (_, i) => {
        return { stint, round: first + i, isShuttle: i < (stint.untimed ?? 0) };
      });
    })
    .toSorted((a, b) => a.round - b.round);
}

/** Rounds that the rider has spent on another bike before this stint. */
function roundsBefore({ stints }: DemoDay, stint: Stint): number {
  const { rider } = BIKES[stint.bike];
  return stints
    .slice(0, stints.indexOf(stint))
    .filter(({ bike }) => BIKES[bike].rider === rider)
    .reduce((sum, { runs }) => sum + runs, 0);
}

function simulateRun(
  random: SeededRandom,
  habits: Habits,
  run: RunCase,
  { place, isShuttle }: { place: number; isShuttle: boolean },
): SimulatedRun {
  const { bike, round } = run;
  const use = biggestHit(random, habits, run);
  const time = runTime(random, run, use);
  const mishap = random.chance(CHANCE.mishap) ? random.pick(MISHAPS) : null;
  const lost = mishap ? MISHAP_TIME.least + MISHAP_TIME.spread * random.uniform() : 0;
  const isTimed = !isShuttle && mishap?.timed !== false && !random.chance(CHANCE.timeMissed);
  const spoilt = mishap && { reason: mishap.reason, readingsCount: mishap.readingsCount };
  const isEnteredByRider = random.chance(CHANCE.mishapEnteredByRider);
  return {
    bike,
    input: {
      startedAt: startOf(run, place),
      timeS: isTimed ? Number((time + lost).toFixed(1)) : null,
      fork: readingOf('fork', random, bike, use.fork),
      shock: readingOf('shock', random, bike, use.shock),
      ratings: random.chance(CHANCE.rated) ? ratingsOf(random, use, round) : null,
      note: isShuttle ? UNTIMED_NOTE : random.chance(CHANCE.noted) ? noteOf(random, use) : '',
      spoilt: isEnteredByRider ? spoilt : null,
    },
    voidedLater: isEnteredByRider ? null : spoilt,
  };
}

/** What the rider reads off the ring; null if it was not pushed down before the run. */
function readingOf(end: End, random: SeededRandom, key: BikeKey, use: EndUse): EndReadingInputDto | null {
  const bike = BIKES[key];
  const { strokeMm } = UNITS[bike[end]].input;
  const shown = Math.round(use.fraction * strokeMm + random.normal(RING_ERROR_SD));
  const travelUsedMm = Math.min(strokeMm, Math.max(0, shown));
  const isSaid = random.chance(use.isBottomed ? CHANCE.bottomOutSaid : CHANCE.noBottomOutSaid);
  const felt = use.isBottomed ? 1 : 0;
  if (random.chance(CHANCE.ringForgotten)) return null;
  const reading = RIDERS[bike.rider].readsTravelLeft
    ? { travelLeftMm: strokeMm - travelUsedMm }
    : { travelUsedMm };
  return { ...reading, bottomOuts: isSaid ? felt : null };
}

/** Riders start one after another, again and again, from nine in the morning on. */
function startOf({ day, round }: RunCase, place: number): string {
  const minute = FIRST_START_MINUTE + round * MINUTES_A_RUN + place * MINUTES_BETWEEN_RIDERS;
  return new Date(Date.parse(`${day.weather.day}T00:00:00Z`) + minute * MINUTE_MS).toISOString();
}
