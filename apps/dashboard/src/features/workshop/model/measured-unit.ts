import type { components } from '../../../shared/http/generated/schema.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';

type Figure = 'positiveVolumeMl' | 'negativeVolumeMl' | 'boreAreaMm2';

/** A figure as it stands in the unit and as it was measured. */
export interface MeasuredFigure {
  readonly figure: Figure;
  readonly before: number;
  readonly after: number;
}

/** What the workshop found; null where nothing was found. */
export interface Found {
  readonly positiveVolumeMl: number | null;
  readonly negativeVolumeMl: number | null;
  readonly boreAreaMm2: number;
}

const DECIMALS = 1;
const rounded = (value: number) => Number(value.toFixed(DECIMALS));

/**
 * The figures to write. The readings tell the volume only for the bore that was entered with them, so that another
 * bore than the unit's goes along with the volume.
 */
export function measuredFigures(unit: SpringUnit, found: Found): readonly MeasuredFigure[] {
  const { positiveVolumeMl, negativeVolumeMl, boreAreaMm2 } = found;
  const write = (figure: Figure, after: number): MeasuredFigure => ({
    figure,
    before: unit[figure],
    after: rounded(after),
  });
  return [
    ...(positiveVolumeMl === null ? [] : [write('positiveVolumeMl', positiveVolumeMl)]),
    ...(positiveVolumeMl !== null && boreAreaMm2 !== unit.boreAreaMm2
      ? [write('boreAreaMm2', boreAreaMm2)]
      : []),
    ...(negativeVolumeMl === null ? [] : [write('negativeVolumeMl', negativeVolumeMl)]),
  ];
}

/** A unit as it is to be written, over the version that was read. */
export interface MeasuredUnit {
  readonly id: string;
  readonly version: number;
  readonly body: components['schemas']['SpringUnitInputDto'];
}

/** The unit with what was measured in place of what stood there, marked measured; the rest as it was. */
export function measuredUnit(unit: SpringUnit, figures: readonly MeasuredFigure[]): MeasuredUnit {
  const { id, version, ...read } = unit;
  // What lies in stock is moved by its own records, and is no part of the message.
  const rest: Omit<typeof read, 'spacersInStock'> & { spacersInStock?: number } = { ...read };
  delete rest.spacersInStock;
  const values = Object.fromEntries(figures.map(({ figure, after }) => [figure, after]));
  const sources = Object.fromEntries(figures.map(({ figure }) => [figure, 'measured' as const]));
  return { id, version, body: { ...rest, ...values, sources: { ...rest.sources, ...sources } } };
}
