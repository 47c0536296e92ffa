import {
  cubicMetresFromMillilitres,
  metresFromMillimetres,
  millilitresFromCubicMetres,
  millimetresFromMetres,
  squareMetresFromSquareMillimetres,
  squareMillimetresFromSquareMetres,
} from '@loamledger/units';
import type { UnitParameter } from './spring-unit.entity.js';
import type { UnitSourcesDto } from './unit-figures.dto.js';

interface ParameterField {
  /** Column of the table, SI unit. */
  readonly column: UnitParameter;
  /** Its name in the engine's refusals. */
  readonly argument: string;
  /** Unit of the field. */
  readonly unit: string;
  readonly toSi: (value: number) => number;
  readonly fromSi: (value: number) => number;
}

const same = (value: number) => value;
const length = { unit: 'mm', toSi: metresFromMillimetres, fromSi: millimetresFromMetres };
const area = {
  unit: 'mm²',
  toSi: squareMetresFromSquareMillimetres,
  fromSi: squareMillimetresFromSquareMetres,
};
const volume = { unit: 'mL', toSi: cubicMetresFromMillilitres, fromSi: millilitresFromCubicMetres };
const unchanged = (unit: string) => ({ unit, toSi: same, fromSi: same });

/** The field of a message behind each stored parameter, and how to convert: the one list of both. */
export const PARAMETER_FIELDS: Readonly<Record<keyof UnitSourcesDto, ParameterField>> = {
  strokeMm: { column: 'stroke', argument: 'unit.stroke', ...length },
  boreAreaMm2: { column: 'boreArea', argument: 'unit.boreArea', ...area },
  shaftAreaMm2: { column: 'shaftArea', argument: 'unit.shaftArea', ...area },
  positiveVolumeMl: { column: 'positiveVolume', argument: 'unit.positiveVolume', ...volume },
  spacerVolumeMl: { column: 'spacerVolume', argument: 'unit.spacerVolume', ...volume },
  negativeVolumeMl: { column: 'negativeVolume', argument: 'unit.negativeVolume', ...volume },
  transferPositionMm: { column: 'transferPosition', argument: 'unit.transferPosition', ...length },
  lowerLegVolumeMl: { column: 'lowerLegVolume', argument: 'unit.lowerLegVolume', ...volume },
  lowerLegAreaMm2: { column: 'lowerLegArea', argument: 'unit.lowerLegArea', ...area },
  bumperLengthMm: { column: 'bumperLength', argument: 'unit.bumperLength', ...length },
  bumperEndForceN: { column: 'bumperEndForce', argument: 'unit.bumperEndForce', ...unchanged('N') },
  damperLowSpeedNsPerM: { column: 'damperLowSpeed', argument: 'unit.damper.lowSpeed', ...unchanged('N·s/m') },
  damperKneeSpeedMPerS: { column: 'damperKneeSpeed', argument: 'unit.damper.kneeSpeed', ...unchanged('m/s') },
  damperHighSpeedNsPerM: {
    column: 'damperHighSpeed',
    argument: 'unit.damper.highSpeed',
    ...unchanged('N·s/m'),
  },
  sealFrictionN: { column: 'sealFriction', argument: 'unit.sealFriction', ...unchanged('N') },
  thermalTimePositiveS: {
    column: 'thermalTimePositive',
    argument: 'unit.thermalTime.positive',
    ...unchanged('s'),
  },
  thermalTimeNegativeS: {
    column: 'thermalTimeNegative',
    argument: 'unit.thermalTime.negative',
    ...unchanged('s'),
  },
  thermalTimeLowerLegS: {
    column: 'thermalTimeLowerLeg',
    argument: 'unit.thermalTime.lowerLeg',
    ...unchanged('s'),
  },
};

export const PARAMETER_NAMES = Object.keys(PARAMETER_FIELDS) as (keyof UnitSourcesDto)[];
