import type { AirSpringUnit } from '@loamledger/spring';
import { DEFAULT_THERMAL_TIME } from '@loamledger/spring';

/** Invented forks as their makers would describe them: what a team enters. */
const COMMON = {
  kind: 'fork',
  shaftArea: 78.5e-6,
  transferPosition: 0.003,
  bumperLength: 0.008,
  bumperEndForce: 1500,
  sealFriction: 18,
  thermalTime: DEFAULT_THERMAL_TIME,
} as const;

export const FORKS: readonly [AirSpringUnit, ...AirSpringUnit[]] = [
  {
    ...COMMON,
    stroke: 0.15,
    boreArea: 800e-6,
    positiveVolume: 178e-6,
    spacerVolume: 8e-6,
    maxSpacers: 4,
    negativeVolume: 24.5e-6,
    lowerLegVolume: 500e-6,
    lowerLegArea: 1700e-6,
    damper: { lowSpeed: 580, kneeSpeed: 0.25, highSpeed: 180 },
  },
  {
    ...COMMON,
    stroke: 0.16,
    boreArea: 860e-6,
    positiveVolume: 203e-6,
    spacerVolume: 9e-6,
    maxSpacers: 5,
    negativeVolume: 28.5e-6,
    lowerLegVolume: 590e-6,
    lowerLegArea: 1880e-6,
    damper: { lowSpeed: 600, kneeSpeed: 0.25, highSpeed: 190 },
  },
  {
    ...COMMON,
    stroke: 0.17,
    boreArea: 905e-6,
    positiveVolume: 227e-6,
    spacerVolume: 10e-6,
    maxSpacers: 5,
    negativeVolume: 31.5e-6,
    lowerLegVolume: 700e-6,
    lowerLegArea: 2100e-6,
    damper: { lowSpeed: 620, kneeSpeed: 0.25, highSpeed: 200 },
  },
];
