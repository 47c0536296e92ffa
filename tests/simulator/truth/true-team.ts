import type { AirSpringUnit } from '@loamledger/spring';
import { radianFromDegrees } from '@loamledger/units';
import type { SeededRandom } from '@loamledger/api/demo/random.js';
import type { ForkFigures } from '../contract.js';
import { FORKS } from './forks.js';

/** A rider as they are, on the fork that they have. */
export interface TrueRider {
  readonly id: string;
  /** What was entered of the fork. */
  readonly entered: ForkFigures;
  /** The same fork as it is. */
  readonly actual: ForkFigures;
  /** How much harder than others they hit, log height. */
  readonly severity: number;
  /** Travel they want left on the hardest run in twenty, m. */
  readonly wantedReserve: number;
}

/** A track as it is. */
export interface TrueTrack {
  readonly id: string;
  readonly altitude: number;
  /** Log of the median over riders of the biggest hit of a run, m. */
  readonly logMedianHit: number;
}

/** What nobody but the simulator knows. */
export interface TrueTeam {
  readonly riders: readonly [TrueRider, ...TrueRider[]];
  /** The first is the one that the advice is for. */
  readonly tracks: readonly [TrueTrack, ...TrueTrack[]];
  /** How a rider takes to a track beyond both alone, log height. */
  readonly habit: (rider: TrueRider, track: TrueTrack) => number;
}

// How teams differ. Standard deviations of volumes, damping and errors are the figures that were set for this study;
// what is marked so is invented, as sizes that a small team may well meet.

const RIDERS = 5;
const TRACKS = 5;
const LOG_VOLUME_SD = 0.015;
const LOG_DAMPING_SD = 0.25;
/** Invented: nobody measures it. */
const LOG_THERMAL_TIME_SD = 0.3;
/** Invented: the biggest hit of a usual run, m, over tracks. */
const MEDIAN_HIT = { height: 0.42, logSd: 0.3 } as const;
/** Invented. */
const SEVERITY_SD = 0.15;
/** Invented. */
const HABIT_SD = 0.06;
/** Invented, m: what riders want left. */
const WANTED_RESERVE = { mean: 0.012, sd: 0.004, least: 0.004, most: 0.025 } as const;
/** Invented, kg. */
const READY_MASS = { mean: 76, sd: 9, least: 55, most: 100 } as const;
const BIKE_MASS = 15.5;
const FRONT_SHARE = 0.42;
const FRONT_UNSPRUNG_MASS = 3;
const HEAD_ANGLE_DEGREES = 64.5;
/** Invented, psi. */
const PRESSURE_LIMITS = { min: 40, max: 125 } as const;
/** Invented, m. */
const ALTITUDE = { least: 300, spread: 1500 } as const;

/** Draws a team. */
export function drawTeam(random: SeededRandom): TrueTeam {
  const riders = Array.from({ length: RIDERS }, (_, i) => drawRider(random, i));
  const tracks = Array.from({ length: TRACKS }, (_, i) => drawTrack(random, i));
  const habits = new Map(
    riders.flatMap(({ id }) =>
      tracks.map((track) => [`${id} ${track.id}`, random.normal(HABIT_SD)] as const),
    ),
  );
  return {
    riders: riders as [TrueRider, ...TrueRider[]],
    tracks: tracks as [TrueTrack, ...TrueTrack[]],
    habit: (rider, track) => habits.get(`${rider.id} ${track.id}`) ?? 0,
  };
}

function drawRider(random: SeededRandom, index: number): TrueRider {
  const unit = random.pick(FORKS);
  const entered: ForkFigures = {
    unit,
    sprungMass: FRONT_SHARE * (bounded(random, READY_MASS) + BIKE_MASS) - FRONT_UNSPRUNG_MASS,
    leverage: { headAngle: radianFromDegrees(HEAD_ANGLE_DEGREES) },
    minPressure: PRESSURE_LIMITS.min,
    maxPressure: PRESSURE_LIMITS.max,
    maxSpacers: unit.maxSpacers,
  };
  return {
    id: `rider ${index + 1}`,
    entered,
    actual: { ...entered, unit: asBuilt(unit, random) },
    severity: random.normal(SEVERITY_SD),
    wantedReserve: bounded(random, WANTED_RESERVE),
  };
}

function drawTrack(random: SeededRandom, index: number): TrueTrack {
  return {
    id: `track ${index + 1}`,
    altitude: ALTITUDE.least + ALTITUDE.spread * random.uniform(),
    logMedianHit: Math.log(MEDIAN_HIT.height) + random.normal(MEDIAN_HIT.logSd),
  };
}

/** A unit as it came out of the workshop, beside its figures. */
function asBuilt(unit: AirSpringUnit, random: SeededRandom): AirSpringUnit {
  const volume = (): number => Math.exp(random.normal(LOG_VOLUME_SD));
  const damping = Math.exp(random.normal(LOG_DAMPING_SD));
  const thermal = Math.exp(random.normal(LOG_THERMAL_TIME_SD));
  const { damper, thermalTime } = unit;
  return {
    ...unit,
    positiveVolume: unit.positiveVolume * volume(),
    negativeVolume: unit.negativeVolume * volume(),
    lowerLegVolume: unit.lowerLegVolume * volume(),
    damper: {
      ...damper,
      lowSpeed: damper.lowSpeed * damping,
      highSpeed: damper.highSpeed * damping,
    },
    thermalTime: {
      positive: thermalTime.positive * thermal,
      negative: thermalTime.negative * thermal,
      lowerLeg: thermalTime.lowerLeg * thermal,
    },
  };
}

function bounded(
  random: SeededRandom,
  { mean, sd, least, most }: { mean: number; sd: number; least: number; most: number },
): number {
  return Math.min(most, Math.max(least, mean + random.normal(sd)));
}
