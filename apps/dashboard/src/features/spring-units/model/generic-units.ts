import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import type { UnitFigure } from './figures.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import { wholeFigures } from '../../../shared/format/whole-figures.js';

interface GenericUnit {
  readonly id: string;
  readonly label: string;
  readonly kind: SpringUnit['kind'];
  readonly figures: Readonly<Record<UnitFigure, number>>;
}

const THERMAL_TIMES = { thermalTimePositiveS: 1.5, thermalTimeNegativeS: 0.3, thermalTimeLowerLegS: 1 };

const FORK = {
  shaftAreaMm2: 78.54,
  transferPositionMm: 3,
  bumperLengthMm: 8,
  bumperEndForceN: 1500,
  damperLowSpeedNsPerM: 600,
  damperKneeSpeedMPerS: 0.25,
  damperHighSpeedNsPerM: 180,
  sealFrictionN: 18,
  ...THERMAL_TIMES,
};

const SHOCK = {
  shaftAreaMm2: 126.7,
  transferPositionMm: 2,
  lowerLegVolumeMl: 0,
  lowerLegAreaMm2: 0,
  bumperLengthMm: 6,
  bumperEndForceN: 4000,
  damperLowSpeedNsPerM: 3500,
  damperKneeSpeedMPerS: 0.12,
  damperHighSpeedNsPerM: 1100,
  sealFrictionN: 60,
  ...THERMAL_TIMES,
};

const fork = (
  strokeMm: number,
  [boreAreaMm2, positiveVolumeMl, negativeVolumeMl]: [number, number, number],
  [spacerVolumeMl, lowerLegVolumeMl, lowerLegAreaMm2]: [number, number, number],
): GenericUnit => ({
  id: `fork-${strokeMm}`,
  label: `Fork, ${withUnit(String(strokeMm), 'mm')}`,
  kind: 'fork',
  figures: {
    ...FORK,
    strokeMm,
    boreAreaMm2,
    positiveVolumeMl,
    negativeVolumeMl,
    spacerVolumeMl,
    lowerLegVolumeMl,
    lowerLegAreaMm2,
  },
});

/**
 * Starting values for a unit that nobody has measured. Invented: no unit on the market; sized so that the usual
 * pressures give the usual sag. All of them are marked assumed until measured.
 */
export const GENERIC_UNITS: readonly GenericUnit[] = [
  fork(140, [779.3, 162.1, 22.4], [8, 455.3, 1658.8]),
  fork(150, [779.3, 173, 24], [8, 487.9, 1658.8]),
  fork(160, [855.3, 201.9, 28.1], [9, 589.4, 1878.7]),
  fork(170, [907.9, 227, 31.7], [10, 703.7, 2111.2]),
  fork(180, [907.9, 237.9, 33.5], [10, 745.1, 2111.2]),
  fork(200, [1017.9, 295.2, 41.8], [11, 924, 2356.2]),
  {
    id: 'shock-65',
    label: wholeFigures('Shock, 65 mm'),
    kind: 'shock',
    figures: {
      ...SHOCK,
      strokeMm: 65,
      boreAreaMm2: 1320.3,
      positiveVolumeMl: 136.3,
      negativeVolumeMl: 17.43,
      spacerVolumeMl: 7,
    },
  },
];
