import { numberText, parseNumber } from '../../../shared/format/parse.js';
import { storedText } from '../../../shared/format/entry.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import type { SpringUnitInput } from '../api/save-spring-unit.js';
import { GENERIC_UNITS } from './generic-units.js';
import { figuresOf, UNIT_FIGURES, type UnitFigure } from './figures.js';

type Source = NonNullable<NonNullable<SpringUnitInput['sources']>['strokeMm']>;

export type UnitValues = {
  [Figure in UnitFigure]: string;
} & {
  name: string;
  kind: string;
  minPressurePsi: string;
  maxPressurePsi: string;
  maxSpacers: string;
  sources: { [Figure in UnitFigure]: string };
};

const perFigure = <Value>(value: (figure: UnitFigure) => Value) =>
  Object.fromEntries(UNIT_FIGURES.map((figure) => [figure, value(figure)])) as Record<UnitFigure, Value>;

export function unitValues(unit: SpringUnit | undefined, newKind: SpringUnit['kind'] = 'fork'): UnitValues {
  return {
    ...perFigure((figure) => numberText(unit?.[figure])),
    name: unit?.name ?? '',
    kind: unit?.kind ?? newKind,
    minPressurePsi: storedText(unit?.minPressurePsi),
    maxPressurePsi: storedText(unit?.maxPressurePsi),
    maxSpacers: numberText(unit?.maxSpacers),
    sources: perFigure((figure) => unit?.sources[figure] ?? 'assumed'),
  };
}

/** The values with the figures of a generic unit, every one of them marked assumed. */
export function withGeneric(values: UnitValues, genericId: string): UnitValues {
  const generic = GENERIC_UNITS.find(({ id }) => id === genericId);
  if (generic === undefined) return values;
  return {
    ...values,
    ...perFigure((figure) => numberText(generic.figures[figure])),
    name: values.name === '' ? generic.label : values.name,
    kind: generic.kind,
    sources: perFigure(() => 'assumed'),
  };
}

// An empty figure becomes NaN, which JSON carries as null and the API refuses at that field.
const figure = (text: string) => parseNumber(text) ?? Number.NaN;
const LOWER_LEGS: readonly UnitFigure[] = ['lowerLegVolumeMl', 'lowerLegAreaMm2'];

export function unitMessage(values: UnitValues): SpringUnitInput {
  const isShock = values.kind === 'shock';
  return {
    ...perFigure((name) => (isShock && LOWER_LEGS.includes(name) ? 0 : figure(values[name]))),
    // Without lower legs their heat time means nothing; the usual one keeps the message complete.
    thermalTimeLowerLegS: isShock ? 1 : figure(values.thermalTimeLowerLegS),
    name: values.name,
    kind: isShock ? 'shock' : 'fork',
    minPressurePsi: parseNumber(values.minPressurePsi),
    maxPressurePsi: parseNumber(values.maxPressurePsi),
    maxSpacers: parseNumber(values.maxSpacers),
    sources: perFigure((name) => values.sources[name] as Source),
  };
}

/** The figures that nobody has measured or entered. */
export const assumedFigures = (unit: SpringUnit): UnitFigure[] =>
  figuresOf(unit.kind).filter((name) => (unit.sources[name] ?? 'assumed') === 'assumed');
