import { numberText, parseNumber } from '../../../shared/format/parse.js';
import { storedText } from '../../../shared/format/entry.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import type { BikeInput } from '../api/save-bike.js';
import { leverageText, readLeverage } from './leverage.js';

type Category = Bike['category'];
type Source = NonNullable<NonNullable<BikeInput['sources']>['massKg']>;

/** The figures that have a source of their own. */
const SOURCED = [
  'massKg',
  'frontUnsprungMassKg',
  'rearUnsprungMassKg',
  'headAngleDeg',
  'leverageTable',
] as const;
type SourcedFigure = (typeof SOURCED)[number];

const perSourced = <Value>(value: (figure: SourcedFigure) => Value) =>
  Object.fromEntries(SOURCED.map((figure) => [figure, value(figure)])) as Record<SourcedFigure, Value>;

/** Unsprung masses nobody weighs: common practice, no source; marked assumed. */
const USUAL_UNSPRUNG = { front: '4.3', rear: '5' };

export function bikeValues(bike: Bike | undefined) {
  return {
    name: bike?.name ?? '',
    riderId: bike?.riderId ?? '',
    category: (bike?.category ?? 'enduro') as string,
    massKg: storedText(bike?.massKg),
    frontUnsprungMassKg: bike === undefined ? USUAL_UNSPRUNG.front : storedText(bike.frontUnsprungMassKg),
    rearUnsprungMassKg: bike === undefined ? USUAL_UNSPRUNG.rear : storedText(bike.rearUnsprungMassKg),
    headAngleDeg: numberText(bike?.headAngleDeg),
    wheelbaseMm: numberText(bike?.wheelbaseMm),
    frontWheelTravelMm: numberText(bike?.frontWheelTravelMm),
    rearWheelTravelMm: numberText(bike?.rearWheelTravelMm),
    frontLoadSharePct: numberText(bike?.frontLoadSharePct),
    centreOfMassHeightMm: numberText(bike?.centreOfMassHeightMm),
    centreOfMassToRearMm: numberText(bike?.centreOfMassToRearMm),
    leverageTable: leverageText(bike?.leverageTable ?? []),
    forkUnitId: bike?.forkUnitId ?? '',
    shockUnitId: bike?.shockUnitId ?? '',
    sources: perSourced((figure): string => bike?.sources[figure] ?? 'assumed'),
  };
}

/** A new bike, with what there is only one of already chosen. */
export function newBikeValues(
  riders: readonly { id: string }[],
  units: readonly { id: string; kind: 'fork' | 'shock' }[],
): BikeValues {
  const only = (things: readonly { id: string }[]) => (things.length === 1 ? (things[0]?.id ?? '') : '');
  return {
    ...bikeValues(undefined),
    riderId: only(riders),
    forkUnitId: only(units.filter(({ kind }) => kind === 'fork')),
    shockUnitId: only(units.filter(({ kind }) => kind === 'shock')),
  };
}

export type BikeValues = ReturnType<typeof bikeValues>;

// An empty figure becomes NaN, which JSON carries as null and the API refuses at that field.
const figure = (text: string) => parseNumber(text) ?? Number.NaN;

export function bikeMessage(values: BikeValues): BikeInput {
  const leverage = readLeverage(values.leverageTable);
  return {
    name: values.name,
    riderId: values.riderId,
    category: values.category as Category,
    massKg: figure(values.massKg),
    frontUnsprungMassKg: figure(values.frontUnsprungMassKg),
    rearUnsprungMassKg: figure(values.rearUnsprungMassKg),
    headAngleDeg: figure(values.headAngleDeg),
    wheelbaseMm: figure(values.wheelbaseMm),
    frontWheelTravelMm: figure(values.frontWheelTravelMm),
    rearWheelTravelMm: figure(values.rearWheelTravelMm),
    frontLoadSharePct: parseNumber(values.frontLoadSharePct),
    centreOfMassHeightMm: parseNumber(values.centreOfMassHeightMm),
    centreOfMassToRearMm: parseNumber(values.centreOfMassToRearMm),
    leverageTable: 'table' in leverage ? leverage.table : [],
    forkUnitId: values.forkUnitId,
    shockUnitId: values.shockUnitId === '' ? null : values.shockUnitId,
    sources: {
      ...perSourced((name) => values.sources[name] as Source),
      // A share that was typed in was weighed; left empty it is assumed.
      frontLoadSharePct: parseNumber(values.frontLoadSharePct) === null ? 'assumed' : 'measured',
    },
  };
}

/** The refused fields of the message under the names of the form: the table is one field there. */
export function formErrors(errors: Record<string, string>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(errors).map(([field, text]) => {
      const row = /^leverageTable\.(\d+)\./.exec(field)?.[1];
      return row === undefined ? [field, text] : ['leverageTable', `Line ${Number(row) + 1}: ${text}`];
    }),
  );
}
