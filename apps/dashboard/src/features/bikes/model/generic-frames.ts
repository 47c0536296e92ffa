import { storedText } from '../../../shared/format/entry.js';
import { numberText } from '../../../shared/format/parse.js';
import type { BikeValues } from './bike-form.js';
import { leverageText, type LeverageTable } from './leverage.js';
import { withUnit } from '../../../shared/format/with-unit.js';

interface GenericFrame {
  readonly category: string;
  readonly label: string;
  readonly figures: {
    readonly massKg: number;
    readonly frontUnsprungMassKg: number;
    readonly rearUnsprungMassKg: number;
    readonly headAngleDeg: number;
    readonly wheelbaseMm: number;
    readonly frontWheelTravelMm: number;
    readonly rearWheelTravelMm: number;
  };
}

const frame = (
  category: string,
  [frontWheelTravelMm, rearWheelTravelMm]: [number, number],
  [headAngleDeg, wheelbaseMm]: [number, number],
  [massKg, frontUnsprungMassKg, rearUnsprungMassKg]: [number, number, number],
): GenericFrame => ({
  category,
  label: `${category}, ${frontWheelTravelMm}/${withUnit(String(rearWheelTravelMm), 'mm')}`,
  figures: {
    massKg,
    frontUnsprungMassKg,
    rearUnsprungMassKg,
    headAngleDeg,
    wheelbaseMm,
    frontWheelTravelMm,
    rearWheelTravelMm,
  },
});

/** Starting values for a bike nobody has measured. Invented: no frame on the market. All are marked assumed. */
export const GENERIC_FRAMES: readonly GenericFrame[] = [
  frame('trail', [140, 130], [65.5, 1_220], [14, 4, 4.6]),
  frame('enduro', [170, 165], [64, 1_250], [15.5, 4.3, 5]),
  frame('downhill', [200, 200], [63, 1_290], [16.5, 4.6, 5.4]),
];

/** Leverage ratio over the share of the stroke: that of the invented rear end behind the generic shock. */
const RATIO = { start: 3.05, slope: -1.15, bend: 0.3 };
const MEAN_RATIO = RATIO.start + RATIO.slope / 2 + RATIO.bend / 3;
const SHARES = [0, 0.25, 0.5, 0.75, 1];

/** A leverage table of that shape that gives the wheel its travel over the whole stroke. */
export function genericLeverage(strokeMm: number, rearWheelTravelMm: number): LeverageTable {
  const scale = rearWheelTravelMm / strokeMm / MEAN_RATIO;
  return SHARES.map((share) => ({
    shockTravelMm: share * strokeMm,
    leverageRatio: Number((scale * (RATIO.start + RATIO.slope * share + RATIO.bend * share ** 2)).toFixed(3)),
  }));
}

/** The values with the figures of a generic frame around the chosen shock, marked assumed. */
export function withFrame(values: BikeValues, category: string, shockStrokeMm: number | null): BikeValues {
  const generic = GENERIC_FRAMES.find((candidate) => candidate.category === category);
  if (generic === undefined) return values;
  const { figures } = generic;
  const rear = shockStrokeMm === null ? 0 : figures.rearWheelTravelMm;
  return {
    ...values,
    category: generic.category,
    massKg: storedText(figures.massKg),
    frontUnsprungMassKg: storedText(figures.frontUnsprungMassKg),
    rearUnsprungMassKg: storedText(figures.rearUnsprungMassKg),
    headAngleDeg: numberText(figures.headAngleDeg),
    wheelbaseMm: numberText(figures.wheelbaseMm),
    frontWheelTravelMm: numberText(figures.frontWheelTravelMm),
    rearWheelTravelMm: numberText(rear),
    leverageTable: shockStrokeMm === null ? '' : leverageText(genericLeverage(shockStrokeMm, rear)),
    sources: {
      massKg: 'assumed',
      frontUnsprungMassKg: 'assumed',
      rearUnsprungMassKg: 'assumed',
      headAngleDeg: 'assumed',
      leverageTable: 'assumed',
    },
  };
}
