import {
  airSpring,
  forkLeverage,
  leverageFromTable,
  pressureAtVenue,
  sprungMass,
  standardAtmosphere,
  type AirSpring,
  type AirSpringUnit,
  type Ambient,
  type SpringFill,
  type SprungEnd,
} from '@loamledger/spring';
import { absolutePascal, gaugePascal, kelvin, radian } from '@loamledger/units';
import type { Bike } from '../bikes/bikes.service.js';
import type { Rider } from '../riders/riders.service.js';
import { engineUnit } from '../spring-units/engine-unit.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';

export const ENDS = ['fork', 'shock'] as const;
/** Which end of the bike. */
export type End = (typeof ENDS)[number];

/** Share of rider and bike on the front wheel where nobody has weighed it. Assumed; common practice, no source. */
export const ASSUMED_FRONT_SHARE = 0.4;

/** What one end of a bike is filled with. Pressure: gauge, Pa. */
export interface EndFill {
  readonly pressure: number;
  readonly spacers: number;
}

/** Where a pressure was pumped in; null: at the track on the day. */
export interface FilledAt {
  readonly altitude: number;
  readonly temperature: number;
}

/**
 * Everything the engine is given about one end of a bike under a rider, SI units, plain enough to be stored: the
 * same inputs give the same answers years later.
 */
export interface EndInputs {
  readonly unit: AirSpringUnit;
  readonly fill: { gaugePressure: number; spacers: number; ambientPressure: number; temperature: number };
  readonly sprungMass: number;
  readonly leverage:
    { headAngle: number } | { table: readonly { shockTravel: number; leverageRatio: number }[] };
}

/** The air around at a track: from its altitude by the standard atmosphere where nothing was read. */
export function ambientAt(
  altitude: number,
  weather: { airTemperature: number | null; stationPressure: number | null },
): Ambient {
  const standard = standardAtmosphere(altitude);
  return {
    pressure: weather.stationPressure === null ? standard.pressure : absolutePascal(weather.stationPressure),
    temperature: weather.airTemperature === null ? standard.temperature : kelvin(weather.airTemperature),
  };
}

/** Mass that stands on the spring of `end`, kg. */
export function endSprungMass(end: End, bike: Bike, rider: Rider): number {
  const front = bike.frontLoadShare ?? ASSUMED_FRONT_SHARE;
  return sprungMass({
    riderMass: rider.readyMass,
    bikeMass: bike.mass,
    loadShare: end === 'fork' ? front : 1 - front,
    unsprungMass: end === 'fork' ? bike.frontUnsprungMass : bike.rearUnsprungMass,
  });
}

/** Collects the inputs of one end. */
export function endInputs(
  end: End,
  parts: {
    unit: SpringUnit;
    bike: Bike;
    rider: Rider;
    fill: EndFill;
    filledAt: FilledAt | null;
    ambient: Ambient;
  },
): EndInputs {
  const { unit, bike, rider, fill, filledAt, ambient } = parts;
  return {
    unit: engineUnit(unit),
    fill: {
      gaugePressure: filledAt ? carried(fill.pressure, filledAt, ambient) : fill.pressure,
      spacers: fill.spacers,
      ambientPressure: ambient.pressure,
      temperature: ambient.temperature,
    },
    sprungMass: endSprungMass(end, bike, rider),
    leverage: end === 'fork' ? { headAngle: bike.headAngle } : { table: bike.leverageTable ?? [] },
  };
}

/** What a gauge shows here of a pressure that was pumped in elsewhere and not touched since. */
function carried(pressure: number, filledAt: FilledAt, ambient: Ambient): number {
  const there = {
    pressure: standardAtmosphere(filledAt.altitude).pressure,
    temperature: kelvin(filledAt.temperature),
  };
  return pressureAtVenue(gaugePascal(pressure), there, ambient);
}

/** The end as the engine takes it. @throws SpringInputError for inputs that cannot be. */
export function engineEnd(inputs: EndInputs): { spring: AirSpring; end: SprungEnd } {
  const { unit, leverage } = inputs;
  return {
    spring: airSpring(unit, engineFill(inputs)),
    end: {
      sprungMass: inputs.sprungMass,
      leverage:
        'headAngle' in leverage
          ? forkLeverage(radian(leverage.headAngle))
          : leverageFromTable(leverage.table, unit.stroke),
    },
  };
}

const engineFill = ({ fill }: EndInputs): SpringFill => ({
  gaugePressure: gaugePascal(fill.gaugePressure),
  spacers: fill.spacers,
  ambientPressure: absolutePascal(fill.ambientPressure),
  temperature: kelvin(fill.temperature),
});
