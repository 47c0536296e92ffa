import {
  bottomingGrid,
  bottomingHeight,
  braking,
  fastCurve,
  fitDropTest,
  hitHeight,
  identifyNegativeVolume,
  identifyVolume,
  landing,
  pressureForSag,
  reboundStep,
  sag,
  settledCurve,
  spacerTrade,
  standardAtmosphere,
  travelForHeight,
  venuePressure,
} from '@loamledger/spring';
import {
  absolutePascal,
  gaugePascal,
  gaugePascalFromPsi,
  kelvin,
  PASCAL_PER_PSI,
  radianFromDegrees,
} from '@loamledger/units';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Member } from './support/member.js';
import { startService, type TestService } from './support/service.js';
import { FORK_END, near, scene, SHOCK_END, springOf } from './support/spring-end.js';

let service: TestService;
let person: Member;

beforeAll(async () => {
  service = await startService();
  person = await new Member(service).signUp();
});
afterAll(() => service.stop());

async function ask(question: string, body: object): Promise<Record<string, unknown>> {
  const { status, body: answer } = await person.post(`/spring/${question}`, body);
  expect([status, answer]).toEqual([200, expect.anything()]);
  return answer as Record<string, unknown>;
}

const fork = { end: FORK_END, fill: { pressurePsi: 65, spacers: 1 } };
const shock = { end: SHOCK_END, fill: { pressurePsi: 230, spacers: 1 } };
const cases = [
  { kind: 'fork' as const, ...fork },
  { kind: 'shock' as const, ...shock },
];

describe.each(cases)('a $kind told with the question', ({ kind, end, fill }) => {
  const here = scene(kind, fill.pressurePsi, fill.spacers);
  const spring = springOf(here);

  it('has the curves of the library', async () => {
    const answer = await ask('curves', { end, fill, points: 5 });
    for (const [name, curve] of [
      ['settled', settledCurve(spring, 5)],
      ['fast', fastCurve(spring, 5)],
    ] as const) {
      expect(answer[name]).toEqual({
        progression: near(curve.progression),
        energyToFullTravelJ: near(curve.energyToFullTravel),
        points: curve.points.map((point) => ({
          travelMm: near(point.travel * 1e3),
          forceN: near(point.force),
          stiffnessNPerMm: near(point.stiffness / 1e3),
          positivePressurePsi: near((point.positivePressure - 90_000) / PASCAL_PER_PSI),
        })),
      });
    }
  });

  it('sags as the library says, and is pumped to that sag again', async () => {
    const settled = sag(spring, here.end);
    const answer = await ask('sag', { end, fill });
    expect(answer).toMatchObject({
      status: 'settled',
      sagMm: near(settled.travel * 1e3),
      sagPct: near(settled.fraction * 100),
      wheelTravelMm: near(settled.wheelTravel * 1e3),
    });
    const back = await ask('pressure-for-sag', { end, spacers: fill.spacers, sagPct: answer['sagPct'] });
    const pressure = pressureForSag(here.unit, here.fill, here.end, settled.fraction);
    expect(pressure.status).toBe('found');
    expect(back['pressure']).toMatchObject({ status: 'found', pressurePsi: near(fill.pressurePsi) });
  });

  it('lands as the library says', async () => {
    const hit = landing(spring, here.end, 0.4);
    expect(hit.status).toBe('peak');
    expect(await ask('landing', { end, fill, heightM: 0.4 })).toMatchObject({
      status: 'peak',
      travelMm: near(hit.peakTravel * 1e3),
      reserveMm: near((spring.stroke - hit.peakTravel) * 1e3),
      timeMs: near(hit.peakTime * 1e3),
      peakForceN: near(hit.peakForce),
      energy: { inputJ: near(hit.energyBalance.input), damperJ: near(hit.energyBalance.damper) },
    });
  });

  it('tells the hit height behind a reading with the interval of the library', async () => {
    const { travel } = travelForHeight(spring, here.end, 0.4);
    const uncertainty = { pressurePsi: 2, sprungMassPct: 4, readingMm: 1.5 };
    const answer = await ask('hit-height', {
      end: { ...end, uncertainty },
      fill,
      travelUsedMm: travel * 1e3,
    });
    const found = hitHeight(
      spring,
      here.end,
      { travelUsed: travel, readingSd: 0.0015 },
      { gaugeSd: gaugePascalFromPsi(2), massSd: 0.04 * here.end.sprungMass },
    );
    if (found.status !== 'solved') throw new Error(found.message);
    // Solved from a travel that was rounded on its way.
    expect(answer['heightM']).toBeCloseTo(found.height, 6);
    expect(answer['lowerM']).toBeCloseTo(found.lower, 6);
    expect(answer['logSd']).toBeCloseTo(found.logSd, 6);
    expect(answer).toMatchObject({ status: 'solved', kind: 'exact' });
  });

  it('just bottoms out where the library says', async () => {
    const found = bottomingHeight(spring, here.end);
    if (found.status !== 'found') throw new Error(found.status);
    const answer = await ask('fullest-hit', { end, fill });
    expect(answer['heightM']).toBeCloseTo(found.height, 6);
    expect(await ask('landing', { end, fill, heightM: found.height + 0.01 })).toMatchObject({
      status: 'bottomed',
      uncertainty: null,
    });
  });

  it('trades spacers for three pressures and says why they differ', async () => {
    const trade = spacerTrade(here.unit, here.fill, here.end, 2, 0.4);
    const answer = await ask('spacer-trade', { end, fill, spacers: 2, heightM: 0.4 });
    for (const name of ['peakTravel', 'midStroke', 'sag'] as const) {
      const target = trade[name];
      if (target.status !== 'found') throw new Error(target.message);
      const told = answer[name] as { changePsi: number; uncertainty: { sd: number } };
      expect(told.changePsi).toBeCloseTo(target.change / PASCAL_PER_PSI, 6);
      expect(told.uncertainty.sd).toBeGreaterThan(0);
      expect(answer['why']).toContain(`−${Math.abs(told.changePsi).toFixed(1)} psi`);
    }
  });

  it('is pumped for a venue as the library says', async () => {
    const venue = { altitudeM: 2_000, airTemperatureC: 5 };
    const air = { pressure: standardAtmosphere(2_000).pressure, temperature: kelvin(278.15) };
    for (const lowerLegs of ['sealed', 'bled'] as const) {
      const found = venuePressure(here.unit, here.fill, here.end, air, lowerLegs);
      if (found.matchedAtSag.status !== 'found' || found.matchedAtMidStroke.status !== 'found')
        throw new Error();
      expect(await ask('venue-pressure', { end, fill, venue, lowerLegs })).toMatchObject({
        venuePressureHpa: near(air.pressure / 100),
        untouchedPsi: near(found.untouched / PASCAL_PER_PSI),
        lowerLegPressureHpa: near(found.lowerLegPressure / 100),
        matchedAtSag: { pressurePsi: near(found.matchedAtSag.gaugePressure / PASCAL_PER_PSI) },
        matchedAtMidStroke: { pressurePsi: near(found.matchedAtMidStroke.gaugePressure / PASCAL_PER_PSI) },
      });
    }
  });

  it('says which way rebound goes as the library does', async () => {
    const after = { pressurePsi: fill.pressurePsi * 1.2, spacers: 2 };
    const changed = springOf(scene(kind, after.pressurePsi, after.spacers));
    const step = reboundStep(spring, changed, here.end);
    if (step.status !== 'told') throw new Error(step.status);
    expect(await ask('rebound-step', { end, before: fill, after })).toMatchObject({
      direction: step.direction,
      rateRatio: near(step.rateRatio),
      dampingRatio: near(step.dampingRatio),
    });
  });

  it('is tried over a grid cell by cell', async () => {
    const pressuresPsi = [fill.pressurePsi - 5, fill.pressurePsi, fill.pressurePsi + 5];
    const answer = await ask('grid', { end, spacers: [0, 2], pressuresPsi, heightsM: [0.3, 0.4] });
    const cells = answer['cells'] as { spacers: number; pressurePsi: number }[];
    const grid = bottomingGrid(here.unit, here.fill, here.end, [0, 2], pressuresPsi.map(gaugePascalFromPsi));
    expect(cells.map((cell) => [cell.spacers, cell.pressurePsi])).toEqual(
      [0, 2].flatMap((spacers) => pressuresPsi.map((psi) => [spacers, psi])),
    );
    for (const [i, cell] of cells.entries()) {
      const bottoming = grid[i]?.bottoming;
      if (bottoming?.status !== 'found') throw new Error(bottoming?.status);
      const tried = scene(kind, cell.pressurePsi, cell.spacers);
      const triedSpring = springOf(tried);
      expect(cell).toMatchObject({
        bottomingHeightM: near(bottoming.height),
        sagPct: near(100 * sag(triedSpring, tried.end).fraction),
        travelsMm: [0.3, 0.4].map((h) => near(1e3 * travelForHeight(triedSpring, tried.end, h).travel)),
      });
    }
  });

  it('is fitted to a drop test as by the library', async () => {
    const landings = [0, 2, 0, 2].map((spacers, i) => {
      const tried = scene(kind, fill.pressurePsi, spacers);
      const { travel } = travelForHeight(springOf(tried), tried.end, 0.5 * 0.7);
      return {
        spacers,
        pressurePsi: fill.pressurePsi,
        dropHeightM: 0.7,
        travelUsedMm: 1e3 * travel + (i % 2),
      };
    });
    const uncertainty = { readingMm: 2, dampingPct: 20 };
    const answer = await ask('drop-test', { end: { ...end, uncertainty }, landings });
    const fit = fitDropTest(
      here,
      landings.map((one) => ({
        spacers: one.spacers,
        gaugePressure: gaugePascalFromPsi(one.pressurePsi),
        dropHeight: one.dropHeightM,
        travelUsed: one.travelUsedMm / 1e3,
      })),
      0.002,
      0.2,
    );
    if (fit.status !== 'fitted') throw new Error(fit.message);
    const told = answer['absorption'] as { value: number; logSd: number };
    // The fit stops within its own tolerance.
    expect(told.value).toBeCloseTo(fit.absorption.value, 5);
    expect(told.logSd).toBeCloseTo(fit.absorption.logSd, 5);
    expect((answer['warnings'] as { code: string }[]).map(({ code }) => code)).toEqual(fit.warnings);
    expect(answer['setUps']).toHaveLength(2);
  });
});

describe('a fork under braking', () => {
  const bike = {
    totalMassKg: 99.5,
    wheelbaseMm: 1_250,
    centreOfMassHeightMm: 1_050,
    centreOfMassToRearMm: 520,
    frontUnsprungMassKg: 4.3,
  };

  it('dives as the library says', async () => {
    const here = scene('fork', 65, 1);
    const input = {
      totalMass: 99.5,
      wheelbase: 1.25,
      centreHeight: 1.05,
      centreToRear: 0.52,
      frontUnsprungMass: 4.3,
      frontBrakeShare: 0.7,
      headAngle: radianFromDegrees(64),
      referenceTravel: 0,
      slope: radianFromDegrees(10),
      deceleration: 3,
    };
    const found = braking(springOf(here), input);
    if (found.status !== 'settled') throw new Error(found.status);
    const question = { ...fork, bike, slopeDeg: 10, decelerationMPerS2: 3, frontBrakeSharePct: 70 };
    expect(await ask('braking', question)).toMatchObject({
      status: 'settled',
      travelMm: near(found.travel * 1e3),
      diveMm: near((found.travel - sag(springOf(here), here.end).travel) * 1e3),
      headAngleDeg: near((found.headAngle * 180) / Math.PI),
      frontLoadN: near(found.frontLoad),
      rearLoadN: near(found.rearLoad),
      liftDecelerationMPerS2: near(found.liftDeceleration),
    });
  });

  it('lifts the rear wheel where the deceleration asks for it, without a travel that cannot be', async () => {
    const question = { ...fork, bike, slopeDeg: 25, decelerationMPerS2: 9 };
    const answer = await ask('braking', question);
    expect(answer).toMatchObject({ status: 'rear-wheel-lifts', travelMm: null, uncertainty: null });
    expect(answer['rearLoadN']).toBeLessThan(0);
  });
});

describe('a unit whose volumes nobody publishes', () => {
  const { unit } = scene('fork', 65, 0);
  const ambient = absolutePascal(90_000);
  const hose = 4e-6;
  /** Boyle's law with the pump attached. */
  const pressureAt = (fillPsi: number, travel: number) => {
    const volume = unit.positiveVolume + hose;
    const absolute = ((fillPsi * PASCAL_PER_PSI + ambient) * volume) / (volume - unit.boreArea * travel);
    return (absolute - ambient) / PASCAL_PER_PSI;
  };
  const runs = [50, 60, 50, 60, 55].map((psi) => ({
    spacers: 0,
    readings: [0, 0.06, 0.12].map((travel) => ({
      travelMm: travel * 1e3,
      pressurePsi: pressureAt(psi, travel),
    })),
  }));
  const question = {
    runs,
    hoseVolumeMl: 4,
    hoseVolumeSdMl: 1.5,
    boreAreaSdPct: 0.5,
    gaugeZeroSdPsi: 0.3,
    gaugeReadingSdPsi: 0.5,
    travelSdMm: 0.5,
    boreAreaMm2: unit.boreArea * 1e6,
    air: { stationPressureHpa: 900 },
  };

  it('is identified as by the library, with what limits it', async () => {
    const found = identifyVolume({
      runs: runs.map((run) => ({
        spacers: 0,
        readings: run.readings.map((reading) => ({
          travel: reading.travelMm / 1e3,
          gaugePressure: gaugePascalFromPsi(reading.pressurePsi),
        })),
      })),
      ambientPressure: ambient,
      boreArea: { value: unit.boreArea, sd: 0.005 * unit.boreArea },
      hoseVolume: { value: 4e-6, sd: 1.5e-6 },
      spacerVolume: { value: 0, sd: 0 },
      gaugeZeroSd: gaugePascalFromPsi(0.3),
      gaugeReadingSd: gaugePascalFromPsi(0.5),
      travelSd: 0.0005,
    });
    if (found.status !== 'identified') throw new Error(found.message);
    const answer = await ask('identify-volume', question);
    expect(answer).toMatchObject({ status: 'identified', reason: null });
    expect(answer['positiveVolumeMl']).toBeCloseTo(found.positiveVolume * 1e6, 4);
    expect(answer['positiveVolumeMl']).toBeCloseTo(unit.positiveVolume * 1e6, 2);
    expect(answer['sdMl']).toBeCloseTo(found.sd * 1e6, 4);
    const shares = answer['shares'] as { of: string; sharePct: number }[];
    expect(shares[0]?.of).toBe(found.limitedBy);
    expect(shares.reduce((sum, { sharePct }) => sum + sharePct, 0)).toBeCloseTo(100, 6);
    expect(answer['assumed']).toEqual(['spacerVolumeSdPct']);
  });

  it('is refused where the readings do not tell it', async () => {
    const flat = [{ spacers: 0, readings: [runs[0]?.readings[0], runs[0]?.readings[0]] }];
    const answer = await ask('identify-volume', { ...question, runs: flat });
    expect(answer).toMatchObject({ status: 'refused', reason: 'too-few-travels', positiveVolumeMl: null });
    const unchecked = await ask('identify-volume', { ...question, gaugeZeroSdPsi: null, boreAreaSdPct: 8 });
    expect(unchecked).toMatchObject({ status: 'refused', reason: 'too-uncertain' });
    expect(unchecked['relativeSdPct']).toBeGreaterThan(3);
  });

  it('has a negative volume as by the library', async () => {
    const repeats = [
      { beforePsi: 70, afterPsi: 60.2 },
      { beforePsi: 70.4, afterPsi: 60.6 },
      { beforePsi: 69.8, afterPsi: 60.1 },
      { beforePsi: 70, afterPsi: 60.1 },
    ];
    const found = identifyNegativeVolume({
      repeats: repeats.map(({ beforePsi, afterPsi }) => ({
        before: gaugePascalFromPsi(beforePsi),
        after: gaugePascalFromPsi(afterPsi),
      })),
      ambientPressure: ambient,
      positiveVolume: { value: unit.positiveVolume - 2 * unit.spacerVolume, sd: 3e-6 },
      hoseVolume: { value: 4e-6, sd: 1.5e-6 },
      boreArea: unit.boreArea,
      shaftArea: unit.shaftArea,
      transferPosition: unit.transferPosition,
      gaugeReadingSd: gaugePascal(0.3 * PASCAL_PER_PSI),
    });
    if (found.status !== 'identified') throw new Error(found.message);
    const body = {
      repeats,
      spacers: 2,
      hoseVolumeMl: 4,
      gaugeReadingSdPsi: 0.3,
      positiveVolumeMl: unit.positiveVolume * 1e6,
      positiveVolumeSdMl: 3,
      spacerVolumeMl: unit.spacerVolume * 1e6,
      boreAreaMm2: unit.boreArea * 1e6,
      shaftAreaMm2: unit.shaftArea * 1e6,
      transferPositionMm: unit.transferPosition * 1e3,
      air: { stationPressureHpa: 900 },
    };
    expect(await ask('identify-negative-volume', body)).toMatchObject({
      status: 'identified',
      negativeVolumeMl: near(found.negativeVolume * 1e6),
      sdMl: near(found.sd * 1e6),
      assumed: ['hoseVolumeSdMl'],
    });
    const rising = [{ beforePsi: 60, afterPsi: 70 }];
    expect(await ask('identify-negative-volume', { ...body, repeats: rising })).toMatchObject({
      status: 'refused',
      reason: 'no-pressure-drop',
    });
  });
});

describe('the uncertainty of an answer', () => {
  const told = {
    pressurePsi: 1,
    sprungMassPct: 3,
    positiveVolumePct: 2,
    negativeVolumePct: 5,
    spacerVolumePct: 2,
    lowerLegVolumePct: 5,
    dampingPct: 10,
    sealFrictionPct: 20,
    readingMm: 2,
  };

  it('is what one input alone does to the answer where only that is uncertain', async () => {
    const none = Object.fromEntries(Object.keys(told).map((name) => [name, 0]));
    const end = { ...FORK_END, uncertainty: { ...none, pressurePsi: 1 } };
    const answer = await ask('sag', { ...fork, end });
    const sagAt = (psi: number) => {
      const here = scene('fork', psi, 1);
      return 1e3 * sag(springOf(here), here.end).travel;
    };
    const { sd, lower, upper, contributions } = answer['uncertainty'] as {
      sd: number;
      lower: number;
      upper: number;
      contributions: object[];
    };
    // A central difference over 2 psi against one over 0.2 psi: they differ by the bend of the curve.
    expect(sd).toBeCloseTo(Math.abs(sagAt(66) - sagAt(64)) / 2, 3);
    expect((upper - lower) / 2).toBeCloseTo(1.6448536 * sd, 6);
    expect(contributions).toEqual([
      expect.objectContaining({ of: 'pressurePsi', sharePct: 100, assumed: false }),
    ]);
  });

  it('counts and lists what is assumed, and is smaller where more is known', async () => {
    const assumed = await ask('landing', { ...fork, heightM: 0.4 });
    const known = await ask('landing', { ...fork, end: { ...FORK_END, uncertainty: told }, heightM: 0.4 });
    const sdOf = (answer: Record<string, unknown>) => (answer['uncertainty'] as { sd: number }).sd;
    expect(sdOf(known)).toBeLessThan(sdOf(assumed));
    expect(assumed['assumed']).toContain('uncertainty.dampingPct');
    expect(known['assumed']).toEqual([
      'unit.thermalTimePositiveS',
      'unit.thermalTimeNegativeS',
      'unit.thermalTimeLowerLegS',
    ]);
    const { contributions } = assumed['uncertainty'] as { contributions: { sharePct: number }[] };
    expect(contributions.reduce((sum, { sharePct }) => sum + sharePct, 0)).toBeCloseTo(100, 6);
  });
});
