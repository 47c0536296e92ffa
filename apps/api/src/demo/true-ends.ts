import {
  pressureAtVenue,
  sprungMass,
  standardAtmosphere,
  DEFAULT_THERMAL_TIME,
  type AirSpring,
  type AirSpringUnit,
  type Ambient,
  type SprungEnd,
} from '@loamledger/spring';
import {
  cubicMetresFromMillilitres,
  gaugePascalFromPsi,
  kelvinFromCelsius,
  metresFromMillimetres,
  radianFromDegrees,
  squareMetresFromSquareMillimetres,
} from '@loamledger/units';
import type { EndSetupInputDto } from '../modules/setups/setups.dto.js';
import { ambientAt, engineEnd, type End } from '../modules/suspension/end-inputs.js';
import { BIKES, type BikeKey } from './bikes.js';
import type { DemoUnit } from './demo-unit.js';
import { RIDERS } from './people.js';
import { WORKSHOP, type DemoDay } from './scenario.js';
import { TRACKS } from './tracks.js';
import { UNITS } from './units.js';

const PER_CENT = 100;
const PASCAL_PER_HECTOPASCAL = 100;
/** What no limit bounds in a unit without limits entered. */
const MOST_SPACERS = 30;

/** What is really in one end: what was set, with the error of the gauge it was set by. */
export interface TrueFill {
  readonly setUp: EndSetupInputDto;
  readonly gaugeErrorPsi: number;
  readonly inWorkshop: boolean;
}

/** The air of a day of the season. */
export function ambientOf({ track, weather }: DemoDay): Ambient {
  const { airTemperatureC, stationPressureHpa } = weather;
  return ambientAt(TRACKS[track].input.altitudeM, {
    airTemperature: airTemperatureC == null ? null : kelvinFromCelsius(airTemperatureC),
    stationPressure: stationPressureHpa == null ? null : stationPressureHpa * PASCAL_PER_HECTOPASCAL,
  });
}

/** One end of a bike under its rider as it really is: not with the figures entered, but with the true ones. */
export function trueEnd(
  bikeKey: BikeKey,
  end: End,
  fill: TrueFill,
  ambient: Ambient,
): { spring: AirSpring; end: SprungEnd } {
  const bike = BIKES[bikeKey];
  const { massKg, frontUnsprungMassKg, rearUnsprungMassKg, headAngleDeg, leverageTable } = bike.input;
  const frontShare = bike.truth.frontLoadSharePct / PER_CENT;
  const shown = gaugePascalFromPsi(fill.setUp.pressurePsi + fill.gaugeErrorPsi);
  return engineEnd({
    unit: trueUnit(UNITS[bike[end]]),
    fill: {
      gaugePressure: fill.inWorkshop ? pressureAtVenue(shown, WORKSHOP_AIR, ambient) : shown,
      spacers: fill.setUp.spacers,
      ambientPressure: ambient.pressure,
      temperature: ambient.temperature,
    },
    sprungMass: sprungMass({
      riderMass: RIDERS[bike.rider].input.readyMassKg,
      bikeMass: massKg,
      loadShare: end === 'fork' ? frontShare : 1 - frontShare,
      unsprungMass: end === 'fork' ? frontUnsprungMassKg : rearUnsprungMassKg,
    }),
    leverage:
      end === 'fork'
        ? { headAngle: radianFromDegrees(headAngleDeg) }
        : {
            table: leverageTable.map(({ shockTravelMm, leverageRatio }) => ({
              shockTravel: metresFromMillimetres(shockTravelMm),
              leverageRatio,
            })),
          },
  });
}

const WORKSHOP_AIR: Ambient = {
  pressure: standardAtmosphere(WORKSHOP.altitudeM).pressure,
  temperature: kelvinFromCelsius(WORKSHOP.temperatureC),
};

function trueUnit({ input, truth }: DemoUnit): AirSpringUnit {
  return {
    kind: input.kind,
    stroke: metresFromMillimetres(input.strokeMm),
    boreArea: squareMetresFromSquareMillimetres(input.boreAreaMm2),
    shaftArea: squareMetresFromSquareMillimetres(input.shaftAreaMm2),
    positiveVolume: cubicMetresFromMillilitres(input.positiveVolumeMl * truth.positiveVolume),
    spacerVolume: cubicMetresFromMillilitres(input.spacerVolumeMl),
    maxSpacers: input.maxSpacers ?? MOST_SPACERS,
    negativeVolume: cubicMetresFromMillilitres(input.negativeVolumeMl * truth.negativeVolume),
    transferPosition: metresFromMillimetres(input.transferPositionMm),
    lowerLegVolume: cubicMetresFromMillilitres(input.lowerLegVolumeMl ?? 0),
    lowerLegArea: squareMetresFromSquareMillimetres(input.lowerLegAreaMm2 ?? 0),
    bumperLength: metresFromMillimetres(input.bumperLengthMm),
    bumperEndForce: input.bumperEndForceN,
    damper: {
      lowSpeed: input.damperLowSpeedNsPerM * truth.damping,
      kneeSpeed: input.damperKneeSpeedMPerS,
      highSpeed: input.damperHighSpeedNsPerM * truth.damping,
    },
    sealFriction: input.sealFrictionN * truth.friction,
    thermalTime: DEFAULT_THERMAL_TIME,
  };
}
