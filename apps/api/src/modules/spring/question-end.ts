import {
  ENGINE_VERSION,
  standardAtmosphere,
  type AirSpring,
  type AirSpringUnit,
  type Ambient,
  type Scene,
} from '@loamledger/spring';
import {
  absolutePascal,
  absolutePascalFromHectopascal,
  celsiusFromKelvin,
  degreesFromRadian,
  gaugePascal,
  gaugePascalFromPsi,
  hectopascalFromAbsolutePascal,
  kelvin,
  kelvinFromCelsius,
  metresFromMillimetres,
  millimetresFromMetres,
  psiFromGaugePascal,
  radian,
  radianFromDegrees,
} from '@loamledger/units';
import { InvalidField } from '../../platform/errors/refusal.js';
import { engineUnit, UNLIMITED_SPACERS } from '../spring-units/engine-unit.js';
import { asking, unitFields, type EngineFields } from '../spring-units/engine-refusal.js';
import { parametersOf } from '../spring-units/unit-figures.js';
import { engineEnd, type EndInputs } from '../suspension/end-inputs.js';
import type { EngineAnswerDto } from './answer.dto.js';
import { completeUncertainty } from './assumed-uncertainty.js';
import type { AirDto, CompleteEndUncertaintyDto, FillDto, SpringEndDto } from './end.dto.js';
import type { Uncertain } from './uncertain.js';

/** The end that a question is about, SI units: told with the question, or of a stored bike. Plain data. */
export interface QuestionEnd {
  readonly unit: AirSpringUnit;
  readonly ambient: Ambient;
  readonly sprungMass: number;
  readonly leverage: EndInputs['leverage'];
  /** Standard uncertainties, in the units of their fields. */
  readonly uncertainty: CompleteEndUncertaintyDto;
  /** Those of them whose figure, or which themselves, are assumed. */
  readonly assumedUncertainties: readonly Uncertain[];
  /** Names of the fields whose figures are assumed. */
  readonly assumed: readonly string[];
}

const CODE = 'spring.impossible';
const same = (value: number) => value;
export const PRESSURE_UNIT = { unit: 'psi', fromSi: (pa: number) => psiFromGaugePascal(gaugePascal(pa)) };
export const LENGTH_UNIT = { unit: 'mm', fromSi: millimetresFromMetres };
export const ANGLE_UNIT = { unit: '°', fromSi: (angle: number) => degreesFromRadian(radian(angle)) };
export const AIR_PRESSURE_UNIT = {
  unit: 'hPa',
  fromSi: (pa: number) => hectopascalFromAbsolutePascal(absolutePascal(pa)),
};
export const TEMPERATURE_UNIT = { unit: '°C', fromSi: (k: number) => celsiusFromKelvin(kelvin(k)) };
export const NO_UNIT = { unit: '', fromSi: same };

/** The fields of a question behind the engine's arguments that every question has. */
const END_FIELDS: EngineFields = {
  ...unitFields('end.unit.'),
  'fill.gaugePressure': { field: 'fill.pressurePsi', ...PRESSURE_UNIT },
  'fill.spacers': { field: 'fill.spacers', ...NO_UNIT },
  'fill.ambientPressure': { field: 'end.air.stationPressureHpa', ...AIR_PRESSURE_UNIT },
  'fill.temperature': { field: 'end.air.airTemperatureC', ...TEMPERATURE_UNIT },
  'end.sprungMass': { field: 'end.sprungMassKg', unit: 'kg', fromSi: same },
  headAngle: { field: 'end.headAngleDeg', ...ANGLE_UNIT },
  'rows.length': { field: 'end.leverageTable', unit: 'rows', fromSi: same },
  'rows[].shockTravel': { field: 'end.leverageTable.#.shockTravelMm', ...LENGTH_UNIT },
  'rows[].leverageRatio': { field: 'end.leverageTable.#.leverageRatio', ...NO_UNIT },
  height: { field: 'heightM', unit: 'm', fromSi: same },
};

/** Asks the engine; `fields` are those that this question alone has. @throws InvalidField for what it refuses. */
export const askEngine = <Answer>(fields: EngineFields, work: () => Answer): Answer =>
  asking(CODE, { ...END_FIELDS, ...fields }, work);

/** The end of a question that tells it. @throws InvalidField where it tells too little. */
export function questionEndOf(input: SpringEndDto): QuestionEnd {
  const { uncertainty, assumed: assumedUncertainties } = completeUncertainty(input.uncertainty ?? {});
  const { kind, thermalTimePositiveS, thermalTimeNegativeS, thermalTimeLowerLegS } = input.unit;
  const leftOut = Object.entries({ thermalTimePositiveS, thermalTimeNegativeS, thermalTimeLowerLegS })
    .filter(([, value]) => value === undefined)
    .map(([name]) => name);
  return {
    unit: engineUnit({ ...parametersOf(input.unit), kind, maxSpacers: UNLIMITED_SPACERS }),
    ambient: ambientOf(input.air ?? {}),
    sprungMass: input.sprungMassKg,
    leverage: leverageOf(input),
    uncertainty,
    assumedUncertainties,
    assumed: [
      ...leftOut.map((name) => `unit.${name}`),
      ...assumedAir(input.air ?? {}).map((name) => `air.${name}`),
      ...assumedUncertainties.map((name) => `uncertainty.${name}`),
    ],
  };
}

function leverageOf({ unit, headAngleDeg, leverageTable }: SpringEndDto): EndInputs['leverage'] {
  if (unit.kind === 'fork') {
    if (headAngleDeg === undefined) throw missing('end.headAngleDeg', 'given for a fork');
    return { headAngle: radianFromDegrees(headAngleDeg) };
  }
  if (leverageTable === undefined) throw missing('end.leverageTable', 'given for a shock');
  return {
    table: leverageTable.map((row) => ({
      shockTravel: metresFromMillimetres(row.shockTravelMm),
      leverageRatio: row.leverageRatio,
    })),
  };
}

const missing = (field: string, allowed: string) => new InvalidField('spring.missing', field, null, allowed);

const SEA_LEVEL = 0;

/** The air around: what was read, and the standard atmosphere for the rest. */
export function ambientOf({ altitudeM, stationPressureHpa, airTemperatureC }: AirDto): Ambient {
  const standard = standardAtmosphere(altitudeM ?? SEA_LEVEL);
  return {
    pressure:
      stationPressureHpa === undefined
        ? standard.pressure
        : absolutePascalFromHectopascal(stationPressureHpa),
    temperature: airTemperatureC === undefined ? standard.temperature : kelvinFromCelsius(airTemperatureC),
  };
}

/** What of the air around was not read. */
export function assumedAir({ altitudeM, stationPressureHpa, airTemperatureC }: AirDto): (keyof AirDto)[] {
  const assumed: [keyof AirDto, boolean][] = [
    ['altitudeM', altitudeM === undefined && stationPressureHpa === undefined],
    ['airTemperatureC', airTemperatureC === undefined],
  ];
  return assumed.filter(([, isAssumed]) => isAssumed).map(([name]) => name);
}

/** The end filled with `fill`, as the engine takes it. @throws SpringInputError for what cannot be. */
export function filledWith(
  end: QuestionEnd,
  { pressurePsi, spacers }: FillDto,
): { readonly scene: Scene; readonly spring: AirSpring } {
  const { unit, ambient, sprungMass, leverage } = end;
  const filled = engineEnd({
    unit,
    fill: {
      gaugePressure: gaugePascalFromPsi(pressurePsi),
      spacers,
      ambientPressure: ambient.pressure,
      temperature: ambient.temperature,
    },
    sprungMass,
    leverage,
  });
  return { spring: filled.spring, scene: { unit, fill: filled.spring.fill, end: filled.end } };
}

/** What every answer says of itself. */
export const aboutAnswer = ({ assumed }: Pick<QuestionEnd, 'assumed'>): EngineAnswerDto => ({
  engineVersion: ENGINE_VERSION,
  assumed: [...assumed],
});
