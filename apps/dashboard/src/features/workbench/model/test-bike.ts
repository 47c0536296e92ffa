import type { BikeEnd, BikeEnds } from '../api/bike-ends.js';

const forkUnit: BikeEnd['unit'] = {
  kind: 'fork',
  strokeMm: 170,
  boreAreaMm2: 907.9,
  shaftAreaMm2: 78.54,
  positiveVolumeMl: 227,
  spacerVolumeMl: 10,
  negativeVolumeMl: 31.7,
  transferPositionMm: 3,
  lowerLegVolumeMl: 703.7,
  lowerLegAreaMm2: 2111.2,
  bumperLengthMm: 8,
  bumperEndForceN: 1500,
  damperLowSpeedNsPerM: 600,
  damperKneeSpeedMPerS: 0.25,
  damperHighSpeedNsPerM: 180,
  sealFrictionN: 18,
  thermalTimePositiveS: 1.5,
  thermalTimeNegativeS: 0.3,
  thermalTimeLowerLegS: 1,
};

const sources = Object.fromEntries(
  Object.keys(forkUnit).map((figure) => [figure, 'entered']),
) as BikeEnd['sources'];

/** Invented figures of a 170 mm fork, as the API would send them. */
export const testFork: BikeEnd = {
  unitId: 'fork',
  unitName: 'Fork 1',
  unit: forkUnit,
  sources,
  limits: { minPressurePsi: 40, maxPressurePsi: 120, maxSpacers: 4 },
  spacersInStock: 2,
  fill: { pressurePsi: 71, spacers: 2 },
  ambientPressureHpa: 850,
  airTemperatureC: 12,
  sprungMassKg: 37,
  headAngleDeg: 64,
  leverageTable: [],
  uncertainty: {
    pressurePsi: 1,
    sprungMassPct: 3,
    positiveVolumePct: 2,
    negativeVolumePct: 5,
    spacerVolumePct: 3,
    lowerLegVolumePct: 10,
    dampingPct: 30,
    sealFrictionPct: 30,
    readingMm: 2,
  },
  forecast: { p05M: 0.2, medianM: 0.4, p95M: 0.8, hit: { logMean: -0.92, levelSd: 0.3, runSd: 0.3 } },
  riskCurve: [0.05, 0.1, 0.2, 0.4, 0.6, 0.8, 1.2, 2, 3].map((heightM) => ({
    heightM,
    riskPct: 100 / (1 + (heightM / 0.4) ** 4),
  })),
  evidence: null,
  wishes: { sagLowPct: 15, sagHighPct: 20, reservePct: 5, acceptedRiskPct: 5 },
  assumed: [],
};

/** Invented figures of a 65 mm shock in a frame with a falling leverage ratio. */
export const testShock: BikeEnd = {
  ...testFork,
  unitId: 'shock',
  unitName: 'Shock 1',
  unit: {
    kind: 'shock',
    strokeMm: 65,
    boreAreaMm2: 1320.3,
    shaftAreaMm2: 126.7,
    positiveVolumeMl: 136.3,
    spacerVolumeMl: 7,
    negativeVolumeMl: 17.43,
    transferPositionMm: 2,
    lowerLegVolumeMl: 0,
    lowerLegAreaMm2: 0,
    bumperLengthMm: 6,
    bumperEndForceN: 4000,
    damperLowSpeedNsPerM: 3500,
    damperKneeSpeedMPerS: 0.12,
    damperHighSpeedNsPerM: 1100,
    sealFrictionN: 60,
    thermalTimePositiveS: 1.5,
    thermalTimeNegativeS: 0.3,
    thermalTimeLowerLegS: 1,
  },
  limits: { minPressurePsi: 100, maxPressurePsi: 300, maxSpacers: 4 },
  fill: { pressurePsi: 180, spacers: 1 },
  sprungMassKg: 52,
  headAngleDeg: null,
  leverageTable: [
    { shockTravelMm: 0, leverageRatio: 2.9 },
    { shockTravelMm: 32.5, leverageRatio: 2.55 },
    { shockTravelMm: 65, leverageRatio: 2.3 },
  ],
};

export const testBraking: BikeEnds['braking'] = {
  totalMassKg: 97,
  wheelbaseMm: 1250,
  centreOfMassHeightMm: 1050,
  centreOfMassToRearMm: 520,
  frontUnsprungMassKg: 4.3,
  assumed: [],
};
