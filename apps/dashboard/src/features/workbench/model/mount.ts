import {
  forkLeverage,
  leverageFromTable,
  SpringInputError,
  type AirSpringUnit,
  type LeverageCurve,
  type Scene,
  type SprungEnd,
} from '@loamledger/spring';
import {
  absolutePascal,
  cubicMetresFromMillilitres,
  gaugePascalFromPsi,
  kelvinFromCelsius,
  metresFromMillimetres,
  radianFromDegrees,
  squareMetresFromSquareMillimetres,
  type AbsolutePascal,
  type Kelvin,
} from '@loamledger/units';
import type { BikeEnd } from '../api/bike-ends.js';
import type { Fill } from './fill.js';

/** One end of a bike as the engine takes it, all but what is in it. SI units. */
export interface Mount {
  readonly unit: AirSpringUnit;
  readonly end: SprungEnd;
  readonly ambientPressure: AbsolutePascal;
  readonly temperature: Kelvin;
}

const PASCAL_PER_HECTOPASCAL = 100;
/** Spacers that the engine accepts where no limit was entered: what the chamber holds decides. */
const UNLIMITED_SPACERS = 30;

/** Converts the answer of the API. @throws SpringInputError for a frame that cannot be. */
export function mountOf(end: BikeEnd): Mount {
  const unit = unitOf(end);
  return {
    unit,
    end: { sprungMass: end.sprungMassKg, leverage: leverageOf(end, unit.stroke) },
    ambientPressure: absolutePascal(end.ambientPressureHpa * PASCAL_PER_HECTOPASCAL),
    temperature: kelvinFromCelsius(end.airTemperatureC),
  };
}

/** The end with something in it. */
export const sceneOf = ({ unit, end, ambientPressure, temperature }: Mount, fill: Fill): Scene => ({
  unit,
  end,
  fill: {
    gaugePressure: gaugePascalFromPsi(fill.pressurePsi),
    spacers: fill.spacers,
    ambientPressure,
    temperature,
  },
});

function leverageOf({ headAngleDeg, leverageTable }: BikeEnd, stroke: number): LeverageCurve {
  if (headAngleDeg !== null) return forkLeverage(radianFromDegrees(headAngleDeg));
  const rows = leverageTable.map(({ shockTravelMm, leverageRatio }) => ({
    shockTravel: metresFromMillimetres(shockTravelMm),
    leverageRatio,
  }));
  return leverageFromTable(rows, stroke);
}

function unitOf({ unit, limits }: BikeEnd): AirSpringUnit {
  return {
    kind: unit.kind,
    stroke: metresFromMillimetres(unit.strokeMm),
    boreArea: squareMetresFromSquareMillimetres(unit.boreAreaMm2),
    shaftArea: squareMetresFromSquareMillimetres(unit.shaftAreaMm2),
    positiveVolume: cubicMetresFromMillilitres(unit.positiveVolumeMl),
    spacerVolume: cubicMetresFromMillilitres(unit.spacerVolumeMl),
    maxSpacers: limits.maxSpacers ?? UNLIMITED_SPACERS,
    negativeVolume: cubicMetresFromMillilitres(unit.negativeVolumeMl),
    transferPosition: metresFromMillimetres(unit.transferPositionMm),
    lowerLegVolume: cubicMetresFromMillilitres(unit.lowerLegVolumeMl),
    lowerLegArea: squareMetresFromSquareMillimetres(unit.lowerLegAreaMm2),
    bumperLength: metresFromMillimetres(unit.bumperLengthMm),
    bumperEndForce: unit.bumperEndForceN,
    damper: {
      lowSpeed: unit.damperLowSpeedNsPerM,
      kneeSpeed: unit.damperKneeSpeedMPerS,
      highSpeed: unit.damperHighSpeedNsPerM,
    },
    sealFriction: unit.sealFrictionN,
    thermalTime: {
      positive: unit.thermalTimePositiveS,
      negative: unit.thermalTimeNegativeS,
      lowerLeg: unit.thermalTimeLowerLegS,
    },
  };
}

/** An answer of the engine, or its refusal of something that cannot be. */
export type Tried<Answer> =
  | { readonly status: 'answered'; readonly answer: Answer }
  | { readonly status: 'refused'; readonly refusal: SpringInputError };

/** Asks the engine; what it refuses comes back as a refusal instead of breaking the page. */
export function tried<Answer>(ask: () => Answer): Tried<Answer> {
  try {
    return { status: 'answered', answer: ask() };
  } catch (refusal) {
    if (refusal instanceof SpringInputError) return { status: 'refused', refusal };
    throw refusal;
  }
}
