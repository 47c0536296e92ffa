import { describe, expect, it } from 'vitest';
import {
  airSpring,
  bottomingHeight,
  braking,
  hitHeight,
  identifyNegativeVolume,
  pressureForSag,
  propagateUncertainty,
  sag,
  sceneInputs,
  sceneWith,
  spacerTrade,
  springForce,
  travelForHeight,
  venuePressure,
  type Scene,
  type SceneInput,
  type UncertainInput,
} from '@loamledger/spring';
import {
  absolutePascal,
  gaugePascal,
  gaugePascalFromPsi,
  kelvin,
  PASCAL_PER_PSI,
  radianFromDegrees,
} from '@loamledger/units';
import { endOf, genericUnit, normals, unitOf } from './spring-reference.js';

/** Standard uncertainties of a pit, relative or in SI: gauge 1 psi, scale 1 kg, volumes some per cent, damping 20 %. */
const SDS: Record<SceneInput, number> = {
  gaugePressure: PASCAL_PER_PSI,
  ambientPressure: 500,
  temperature: 2,
  sprungMass: 1,
  boreArea: 4e-6,
  positiveVolume: 4e-6,
  negativeVolume: 1.5e-6,
  spacerVolume: 3e-7,
  lowerLegVolume: 2e-5,
  sealFriction: 4,
  logDamping: 0.2,
  logThermalTime: 0.3,
};
const ASSUMED: readonly SceneInput[] = ['logDamping', 'logThermalTime'];
/** Standard error of a standard deviation from 2000 draws is 1.6 %; first order adds its own per cent or two. */
const DRAWS = 2000;
const AGREEMENT = 0.05;

function sceneOf(name: string, spacers: number): Scene {
  const g = genericUnit(name);
  return {
    unit: unitOf(g),
    end: endOf(g),
    fill: {
      gaugePressure: gaugePascalFromPsi(g.p_psi),
      spacers,
      ambientPressure: absolutePascal(g.p_a),
      temperature: kelvin(g.T),
    },
  };
}

const scene = sceneOf('fork170', 1);
const values = sceneInputs(scene);
const inputs: UncertainInput<SceneInput>[] = (Object.keys(SDS) as SceneInput[]).map((name) => ({
  name,
  value: values[name],
  sd: SDS[name],
  isAssumed: ASSUMED.includes(name),
}));

const springOf = ({ unit, fill }: Scene) => airSpring(unit, fill);
const gaugeOf = (answer: { status: string; gaugePressure?: number }) =>
  answer.status === 'found' ? answer.gaugePressure : undefined;

const questions: Record<string, (scene: Scene) => number | undefined> = {
  'sag, m': (s) => sag(springOf(s), s.end).travel,
  'force in the middle of the stroke, N': (s) => springForce(springOf(s), s.unit.stroke / 2),
  'travel used by a hit of 0.4 m, m': (s) => travelForHeight(springOf(s), s.end, 0.4).travel,
  'fullest hit, m': (s) => {
    const result = bottomingHeight(springOf(s), s.end);
    return result.status === 'found' ? result.height : undefined;
  },
  'pressure for 18 % sag, Pa': (s) => gaugeOf(pressureForSag(s.unit, s.fill, s.end, 0.18)),
  'pressure that keeps the peak travel with a spacer more, Pa': (s) =>
    gaugeOf(spacerTrade(s.unit, s.fill, s.end, 2, 0.4).peakTravel),
  'pressure that keeps the middle with a spacer more, Pa': (s) =>
    gaugeOf(spacerTrade(s.unit, s.fill, s.end, 2, 0.4).midStroke),
  'pressure at a cold venue matched at sag, Pa': (s) => {
    const venue = { pressure: absolutePascal(81_500), temperature: kelvin(278) };
    return gaugeOf(venuePressure(s.unit, s.fill, s.end, venue, 'bled').matchedAtSag);
  },
  'braking dive, m': (s) => {
    const result = braking(springOf(s), {
      totalMass: 97,
      wheelbase: 1.25,
      centreHeight: 1.05,
      centreToRear: 0.52,
      frontUnsprungMass: 4.3,
      frontBrakeShare: 0.7,
      headAngle: radianFromDegrees(64),
      referenceTravel: 0.034,
      slope: radianFromDegrees(15),
      deceleration: 1,
    });
    return result.status === 'settled' ? result.dive : undefined;
  },
};

function standardDeviation(sample: readonly number[]): number {
  const mean = sample.reduce((a, b) => a + b, 0) / sample.length;
  return Math.sqrt(sample.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (sample.length - 1));
}

describe('linear propagation against Monte Carlo', () => {
  it.each(Object.entries(questions))('%s', (_, question) => {
    const linear = propagateUncertainty(inputs, (changed) => question(sceneWith(scene, changed)));
    if (linear.status !== 'found') throw new Error('no answer');
    const random = normals(11);
    const sample = Array.from({ length: DRAWS }, () => {
      const drawn = Object.fromEntries(inputs.map(({ name, value, sd }) => [name, value + sd * random()]));
      return question(sceneWith(scene, drawn)) ?? NaN;
    });
    expect(Math.abs(linear.sd / standardDeviation(sample) - 1)).toBeLessThan(AGREEMENT);
    // A 90 % interval holds 90 % of the draws: binomial standard deviation 0.7 %, and what is not linear.
    const inside = sample.filter((x) => x > linear.lower && x < linear.upper).length / DRAWS;
    expect(Math.abs(inside - 0.9)).toBeLessThan(0.025);
  });

  it('hit height: its own propagation agrees with Monte Carlo over reading, gauge and mass', () => {
    const spring = springOf(scene);
    const reading = { travelUsed: 0.13, readingSd: 0.002 };
    const uncertainty = { gaugeSd: SDS.gaugePressure, massSd: SDS.sprungMass };
    const result = hitHeight(spring, scene.end, reading, uncertainty);
    if (result.status !== 'solved') throw new Error(result.message);
    const random = normals(5);
    const logs = Array.from({ length: DRAWS }, () => {
      const drawn = sceneWith(scene, {
        gaugePressure: values.gaugePressure + SDS.gaugePressure * random(),
        sprungMass: values.sprungMass + SDS.sprungMass * random(),
      });
      const travelUsed = reading.travelUsed + reading.readingSd * random();
      const found = hitHeight(springOf(drawn), drawn.end, { travelUsed, readingSd: 0.002 }, uncertainty);
      return found.status === 'solved' ? found.logHeight : NaN;
    });
    expect(Math.abs(result.logSd / standardDeviation(logs) - 1)).toBeLessThan(AGREEMENT);
  });

  it('negative chamber from the pressure drop', () => {
    const g = genericUnit('fork170');
    const sds = { gauge: 0.5 * PASCAL_PER_PSI, volume: 3e-6, hose: 1.5e-6 };
    const result = (before: number, after: number, volume: number, hose: number) =>
      identifyNegativeVolume({
        repeats: [{ before: gaugePascal(before), after: gaugePascal(after) }],
        ambientPressure: absolutePascal(101_325),
        positiveVolume: { value: volume, sd: sds.volume },
        hoseVolume: { value: hose, sd: sds.hose },
        boreArea: g.A,
        shaftArea: g.A_shaft,
        transferPosition: g.x_t,
        gaugeReadingSd: sds.gauge,
      });
    const [before, after] = [70 * PASCAL_PER_PSI, 60.8 * PASCAL_PER_PSI];
    const linear = result(before, after, g.Vp0, 6e-6);
    if (linear.status !== 'identified') throw new Error(linear.message);
    const random = normals(9);
    const sample = Array.from({ length: DRAWS }, () => {
      const drawn = result(
        before + sds.gauge * random(),
        after + sds.gauge * random(),
        g.Vp0 + sds.volume * random(),
        6e-6 + sds.hose * random(),
      );
      return drawn.status === 'identified' ? drawn.negativeVolume : undefined;
    }).filter((x) => x !== undefined);
    expect(sample.length).toBeGreaterThan(0.97 * DRAWS);
    expect(Math.abs(linear.sd / standardDeviation(sample) - 1)).toBeLessThan(AGREEMENT);
  });
});

describe('propagateUncertainty', () => {
  it('lists what adds most first, shares that add up to 1, and what was assumed', () => {
    const result = propagateUncertainty(inputs, (changed) => {
      const s = sceneWith(scene, changed);
      return travelForHeight(springOf(s), s.end, 0.4).travel;
    });
    if (result.status !== 'found') throw new Error('no answer');
    const shares = result.contributions.map(({ share }) => share);
    expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
    expect(result.assumed).toEqual(ASSUMED);
    const damping = result.contributions.find(({ name }) => name === 'logDamping');
    expect(damping?.effect).toBeLessThan(0);
    expect(damping?.isAssumed).toBe(true);
  });

  it('is exact for a straight answer, and uses one side where the other has no answer', () => {
    const pair = [
      { name: 'a' as const, value: 1, sd: 0.3, isAssumed: false },
      { name: 'b' as const, value: 2, sd: 0.4, isAssumed: false },
    ];
    const straight = propagateUncertainty(pair, ({ a, b }) => 3 * a - 2 * b);
    expect(straight.status === 'found' && straight.sd).toBeCloseTo(Math.hypot(0.9, 0.8), 9);
    const edge = propagateUncertainty(pair, ({ a }) => (a > 1 ? undefined : a));
    expect(edge.status === 'found' && edge.sd).toBeCloseTo(0.3, 9);
    expect(propagateUncertainty(pair, () => undefined)).toEqual({ status: 'no-answer' });
  });
});
