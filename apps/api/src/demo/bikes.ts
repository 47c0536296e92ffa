import type { BikeInputDto, LeverageRowDto } from '../modules/bikes/bikes.dto.js';
import type { RiderKey } from './people.js';
import type { UnitKey } from './units.js';

interface DemoBike {
  readonly input: Omit<BikeInputDto, 'riderId' | 'forkUnitId' | 'shockUnitId'>;
  readonly rider: RiderKey;
  readonly fork: UnitKey;
  readonly shock: UnitKey;
  /** What the tool is not told: the share of the load that really is on the front wheel, %. */
  readonly truth: { readonly frontLoadSharePct: number };
}

/** Rows at even spacing over the shock's stroke. */
const leverage = (strokeMm: number, ratios: readonly number[]): LeverageRowDto[] =>
  ratios.map((leverageRatio, i) => ({
    shockTravelMm: Math.round((strokeMm * i * 10) / (ratios.length - 1)) / 10,
    leverageRatio,
  }));

/** The invented bikes. */
export const BIKES = {
  ashTrail: {
    input: {
      name: 'Ash, trail',
      category: 'trail',
      massKg: 14.1,
      frontUnsprungMassKg: 4.1,
      rearUnsprungMassKg: 4.9,
      headAngleDeg: 65.6,
      wheelbaseMm: 1_212,
      frontWheelTravelMm: 140,
      rearWheelTravelMm: 141,
      frontLoadSharePct: 40.5,
      leverageTable: leverage(52.5, [2.96, 2.76, 2.61, 2.51]),
      sources: {
        massKg: 'measured',
        headAngleDeg: 'entered',
        frontLoadSharePct: 'measured',
        leverageTable: 'entered',
      },
    },
    rider: 'ash',
    fork: 'ashTrailFork',
    shock: 'ashTrailShock',
    truth: { frontLoadSharePct: 40.9 },
  },
  ashEnduro: {
    input: {
      name: 'Ash, enduro',
      category: 'enduro',
      massKg: 15.6,
      frontUnsprungMassKg: 4.5,
      rearUnsprungMassKg: 5.2,
      headAngleDeg: 64.2,
      wheelbaseMm: 1_248,
      frontWheelTravelMm: 160,
      rearWheelTravelMm: 162,
      frontLoadSharePct: 40.5,
      centreOfMassHeightMm: 1_060,
      centreOfMassToRearMm: 505,
      leverageTable: leverage(60, [3.05, 2.8, 2.58, 2.42]),
      sources: {
        massKg: 'measured',
        frontUnsprungMassKg: 'measured',
        rearUnsprungMassKg: 'measured',
        headAngleDeg: 'measured',
        frontLoadSharePct: 'measured',
        leverageTable: 'measured',
      },
    },
    rider: 'ash',
    fork: 'ashEnduroFork',
    shock: 'ashEnduroShock',
    truth: { frontLoadSharePct: 40.2 },
  },
  brambleEnduro: {
    input: {
      name: 'Bramble, enduro',
      category: 'enduro',
      massKg: 16.2,
      frontUnsprungMassKg: 4.7,
      rearUnsprungMassKg: 5.4,
      headAngleDeg: 63.8,
      wheelbaseMm: 1_281,
      frontWheelTravelMm: 170,
      rearWheelTravelMm: 172,
      frontLoadSharePct: 41.5,
      leverageTable: leverage(65, [2.96, 2.72, 2.54, 2.41]),
      sources: {
        massKg: 'measured',
        headAngleDeg: 'entered',
        frontLoadSharePct: 'measured',
        leverageTable: 'entered',
      },
    },
    rider: 'bramble',
    fork: 'brambleEnduroFork',
    shock: 'brambleEnduroShock',
    truth: { frontLoadSharePct: 41.9 },
  },
  brambleDownhill: {
    input: {
      name: 'Bramble, downhill',
      category: 'downhill',
      massKg: 17.4,
      frontUnsprungMassKg: 5.2,
      rearUnsprungMassKg: 5.8,
      headAngleDeg: 62.8,
      wheelbaseMm: 1_302,
      frontWheelTravelMm: 200,
      rearWheelTravelMm: 205,
      frontLoadSharePct: null,
      leverageTable: leverage(75, [3.1, 2.94, 2.74, 2.56, 2.4]),
      sources: { massKg: 'entered', headAngleDeg: 'entered', leverageTable: 'entered' },
    },
    rider: 'bramble',
    fork: 'brambleDownhillFork',
    shock: 'brambleDownhillShock',
    truth: { frontLoadSharePct: 40.8 },
  },
  cloverEnduro: {
    input: {
      name: 'Clover, enduro',
      category: 'enduro',
      massKg: 15.2,
      frontUnsprungMassKg: 4.3,
      rearUnsprungMassKg: 5,
      headAngleDeg: 64.5,
      wheelbaseMm: 1_206,
      frontWheelTravelMm: 160,
      rearWheelTravelMm: 164,
      frontLoadSharePct: 40,
      leverageTable: leverage(62.5, [2.9, 2.7, 2.55, 2.45]),
      sources: { massKg: 'measured', frontLoadSharePct: 'entered', leverageTable: 'entered' },
    },
    rider: 'clover',
    fork: 'cloverFork',
    shock: 'cloverShock',
    truth: { frontLoadSharePct: 40.4 },
  },
  duneDownhill: {
    input: {
      name: 'Dune, downhill',
      category: 'downhill',
      massKg: 16.9,
      frontUnsprungMassKg: 5,
      rearUnsprungMassKg: 5.6,
      headAngleDeg: 63,
      wheelbaseMm: 1_274,
      frontWheelTravelMm: 200,
      rearWheelTravelMm: 203,
      frontLoadSharePct: 40,
      leverageTable: leverage(75, [3.02, 2.86, 2.7, 2.55, 2.42]),
      sources: {
        massKg: 'measured',
        headAngleDeg: 'measured',
        frontLoadSharePct: 'measured',
        leverageTable: 'measured',
      },
    },
    rider: 'dune',
    fork: 'duneFork',
    shock: 'duneShock',
    truth: { frontLoadSharePct: 39.7 },
  },
  elderTrail: {
    input: {
      name: 'Elder, trail',
      category: 'trail',
      massKg: 14.8,
      frontUnsprungMassKg: 4.2,
      rearUnsprungMassKg: 5,
      headAngleDeg: 65,
      wheelbaseMm: 1_254,
      frontWheelTravelMm: 150,
      rearWheelTravelMm: 147,
      frontLoadSharePct: null,
      leverageTable: leverage(55, [2.9, 2.72, 2.58, 2.5]),
      sources: { massKg: 'entered', leverageTable: 'assumed' },
    },
    rider: 'elder',
    fork: 'elderFork',
    shock: 'elderShock',
    truth: { frontLoadSharePct: 40.6 },
  },
} as const satisfies Record<string, DemoBike>;

export type BikeKey = keyof typeof BIKES;
