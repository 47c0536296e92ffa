import { DEFAULT_THERMAL_TIME } from '@loamledger/spring';
import type { SpringUnitEntity, UnitParameter } from './spring-unit.entity.js';
import type {
  CompleteUnitFiguresDto,
  CompleteUnitSourcesDto,
  UnitFiguresDto,
  UnitSourcesDto,
} from './unit-figures.dto.js';
import { PARAMETER_FIELDS, PARAMETER_NAMES } from './unit-parameters.js';

type UnitFigures = Pick<SpringUnitEntity, 'kind' | UnitParameter>;

/** A message's figures in SI units; what may be left out is filled in. */
export function parametersOf(figures: UnitFiguresDto): Record<UnitParameter, number> {
  const complete = {
    ...figures,
    lowerLegVolumeMl: figures.lowerLegVolumeMl ?? 0,
    lowerLegAreaMm2: figures.lowerLegAreaMm2 ?? 0,
    thermalTimePositiveS: figures.thermalTimePositiveS ?? DEFAULT_THERMAL_TIME.positive,
    thermalTimeNegativeS: figures.thermalTimeNegativeS ?? DEFAULT_THERMAL_TIME.negative,
    thermalTimeLowerLegS: figures.thermalTimeLowerLegS ?? DEFAULT_THERMAL_TIME.lowerLeg,
  };
  const entries = PARAMETER_NAMES.map((name) => {
    const { column, toSi } = PARAMETER_FIELDS[name];
    return [column, toSi(complete[name])] as const;
  });
  return Object.fromEntries(entries) as Record<UnitParameter, number>;
}

/** The sources that a message names, by stored parameter. */
export function sourcesOf(sources: UnitSourcesDto): SpringUnitEntity['sources'] {
  const named = PARAMETER_NAMES.filter((name) => sources[name] !== undefined);
  return Object.fromEntries(named.map((name) => [PARAMETER_FIELDS[name].column, sources[name]]));
}

/** A unit's figures as a message. */
export function figuresAnswer(unit: UnitFigures): CompleteUnitFiguresDto {
  const parameters = Object.fromEntries(
    PARAMETER_NAMES.map((name) => [name, PARAMETER_FIELDS[name].fromSi(unit[PARAMETER_FIELDS[name].column])]),
  ) as Record<keyof UnitSourcesDto, number>;
  return { kind: unit.kind, ...parameters };
}

/** Where each figure of a unit comes from, as a message. */
export const sourcesAnswer = ({ sources }: Pick<SpringUnitEntity, 'sources'>): CompleteUnitSourcesDto =>
  Object.fromEntries(
    PARAMETER_NAMES.map((name) => [name, sources[PARAMETER_FIELDS[name].column] ?? 'assumed']),
  ) as unknown as CompleteUnitSourcesDto;
