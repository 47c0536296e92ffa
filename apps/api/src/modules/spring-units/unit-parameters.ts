import {
  cubicMetresFromMillilitres,
  metresFromMillimetres,
  millilitresFromCubicMetres,
  millimetresFromMetres,
  squareMetresFromSquareMillimetres,
  squareMillimetresFromSquareMetres,
} from '@loamledger/units';
import type { UnitParameter } from './spring-unit.entity.js';
import type { UnitSourcesDto } from './spring-units.dto.js';

interface ParameterField {
  /** Column of the table, SI unit. */
  readonly column: UnitParameter;
  readonly toSi: (value: number) => number;
  readonly fromSi: (value: number) => number;
}

const same = (value: number) => value;
const length = { toSi: metresFromMillimetres, fromSi: millimetresFromMetres };
const area = { toSi: squareMetresFromSquareMillimetres, fromSi: squareMillimetresFromSquareMetres };
const volume = { toSi: cubicMetresFromMillilitres, fromSi: millilitresFromCubicMetres };
const unchanged = { toSi: same, fromSi: same };

/** The field of a message behind each stored parameter, and how to convert: the one list of both. */
export const PARAMETER_FIELDS: Readonly<Record<keyof UnitSourcesDto, ParameterField>> = {
  strokeMm: { column: 'stroke', ...length },
  boreAreaMm2: { column: 'boreArea', ...area },
  shaftAreaMm2: { column: 'shaftArea', ...area },
  positiveVolumeMl: { column: 'positiveVolume', ...volume },
  spacerVolumeMl: { column: 'spacerVolume', ...volume },
  negativeVolumeMl: { column: 'negativeVolume', ...volume },
  transferPositionMm: { column: 'transferPosition', ...length },
  lowerLegVolumeMl: { column: 'lowerLegVolume', ...volume },
  lowerLegAreaMm2: { column: 'lowerLegArea', ...area },
  bumperLengthMm: { column: 'bumperLength', ...length },
  bumperEndForceN: { column: 'bumperEndForce', ...unchanged },
  damperLowSpeedNsPerM: { column: 'damperLowSpeed', ...unchanged },
  damperKneeSpeedMPerS: { column: 'damperKneeSpeed', ...unchanged },
  damperHighSpeedNsPerM: { column: 'damperHighSpeed', ...unchanged },
  sealFrictionN: { column: 'sealFriction', ...unchanged },
  thermalTimePositiveS: { column: 'thermalTimePositive', ...unchanged },
  thermalTimeNegativeS: { column: 'thermalTimeNegative', ...unchanged },
  thermalTimeLowerLegS: { column: 'thermalTimeLowerLeg', ...unchanged },
};

export const PARAMETER_NAMES = Object.keys(PARAMETER_FIELDS) as (keyof UnitSourcesDto)[];
