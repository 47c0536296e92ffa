import { airSpring, type AirSpringUnit } from '@loamledger/spring';
import { absolutePascal, gaugePascal, kelvin } from '@loamledger/units';
import { asking, unitFields, type EngineFields } from './engine-refusal.js';
import type { SpringUnitEntity, UnitParameter } from './spring-unit.entity.js';

type UnitColumns = Pick<SpringUnitEntity, 'kind' | 'maxSpacers' | UnitParameter>;

/** Spacers that the engine accepts where no limit was entered: what the chamber holds decides. */
export const UNLIMITED_SPACERS = 30;

/** The stored unit as the engine takes it. */
export function engineUnit(unit: UnitColumns): AirSpringUnit {
  return {
    kind: unit.kind,
    stroke: unit.stroke,
    boreArea: unit.boreArea,
    shaftArea: unit.shaftArea,
    positiveVolume: unit.positiveVolume,
    spacerVolume: unit.spacerVolume,
    maxSpacers: unit.maxSpacers ?? UNLIMITED_SPACERS,
    negativeVolume: unit.negativeVolume,
    transferPosition: unit.transferPosition,
    lowerLegVolume: unit.lowerLegVolume,
    lowerLegArea: unit.lowerLegArea,
    bumperLength: unit.bumperLength,
    bumperEndForce: unit.bumperEndForce,
    damper: {
      lowSpeed: unit.damperLowSpeed,
      kneeSpeed: unit.damperKneeSpeed,
      highSpeed: unit.damperHighSpeed,
    },
    sealFriction: unit.sealFriction,
    thermalTime: {
      positive: unit.thermalTimePositive,
      negative: unit.thermalTimeNegative,
      lowerLeg: unit.thermalTimeLowerLeg,
    },
  };
}

/**
 * Refuses a unit that cannot be built: the engine is the judge, here for the field that a person entered.
 * @throws InvalidField naming the field.
 */
export function refuseImpossibleUnit(unit: UnitColumns): void {
  // Any fill will do: it is the unit that is tried, with as many spacers as may ever go in.
  const fill = {
    gaugePressure: gaugePascal(500_000),
    spacers: unit.maxSpacers ?? 0,
    ambientPressure: absolutePascal(101_325),
    temperature: kelvin(293.15),
  };
  asking('spring-unit.impossible', UNIT_FIELDS, () => airSpring(engineUnit(unit), fill));
}

/** What the unit cannot hold with all its spacers is refused for their number. */
const UNIT_FIELDS: EngineFields = {
  ...unitFields(''),
  'fill.spacers': { field: 'maxSpacers', unit: '', fromSi: (count) => count },
};
