import { describe, expect, it } from 'vitest';
import {
  airSpring,
  fitDropTest,
  reboundStep,
  SpringInputError,
  sceneWith,
  travelForHeight,
  type DropLanding,
  type Scene,
} from '@loamledger/spring';
import { absolutePascal, gaugePascalFromPsi, kelvin } from '@loamledger/units';
import { endOf, genericUnit, normals, unitOf } from './spring-reference.js';

const g = genericUnit('fork170');
const scene: Scene = {
  unit: unitOf(g),
  end: endOf(g),
  fill: {
    gaugePressure: gaugePascalFromPsi(65),
    spacers: 0,
    ambientPressure: absolutePascal(g.p_a),
    temperature: kelvin(g.T),
  },
};
const RING = 0.002;
const DAMPING_LOG_SD = 0.3;

type SetUp = readonly [spacers: number, psi: number, dropHeight: number];
/** Set-ups tried out of order, twice there and back, so that a drift would show. */
const MIXED: readonly SetUp[] = [
  [1, 65, 0.6],
  [3, 65, 0.6],
  [0, 65, 0.6],
  [2, 60, 0.6],
  [2, 60, 0.6],
  [0, 65, 0.6],
  [3, 65, 0.6],
  [1, 65, 0.6],
];

function readings(
  plan: readonly SetUp[],
  truth: { absorption: number; damping: number },
  error: (i: number) => number = () => 0,
): DropLanding[] {
  return plan.map(([spacers, psi, dropHeight], i) => {
    const { unit, end, fill } = sceneWith(scene, { logDamping: Math.log(truth.damping) });
    const spring = airSpring(unit, { ...fill, spacers, gaugePressure: gaugePascalFromPsi(psi) });
    const { travel } = travelForHeight(spring, end, truth.absorption * dropHeight);
    const travelUsed = Math.min(unit.stroke, Math.max(0, travel + error(i)));
    return { spacers, gaugePressure: gaugePascalFromPsi(psi), dropHeight, travelUsed };
  });
}

describe('drop test', () => {
  it('finds the part of the drop that goes into the fork from exact readings', () => {
    const result = fitDropTest(scene, readings(MIXED, { absorption: 0.7, damping: 1 }), RING, DAMPING_LOG_SD);
    if (result.status !== 'fitted') throw new Error(result.message);
    expect(result.absorption.value).toBeCloseTo(0.7, 4);
    expect(result.damping.value).toBeCloseTo(1, 3);
    expect(result.scatter).toBeLessThan(0.01);
    expect(result.warnings).toEqual([]);
    for (const setUp of result.setUps) expect(Math.abs(setUp.residual)).toBeLessThan(0.01);
  });

  it('does not claim to tell the damping from drops of one height: pressure and spacers hardly part the two', () => {
    const result = fitDropTest(scene, readings(MIXED, { absorption: 0.7, damping: 1 }), RING, DAMPING_LOG_SD);
    expect(result.status === 'fitted' && result.damping.isTold).toBe(false);
  });

  it('tells the damping from many drops of very different heights', () => {
    const heights: SetUp[] = [0.06, 0.9, 0.3, 0.1, 0.7].map((h) => [1, 65, h] as const);
    const plan = Array.from({ length: 16 }, (_, i) => (i % 2 === 0 ? heights : [...heights].reverse())).flat();
    const result = fitDropTest(scene, readings(plan, { absorption: 0.7, damping: 1.3 }), RING, DAMPING_LOG_SD);
    if (result.status !== 'fitted') throw new Error(result.message);
    expect(result.damping.isTold).toBe(true);
    expect(result.damping.lower).toBeLessThan(1.3);
    expect(result.damping.upper).toBeGreaterThan(1.3);
  });

  it('has 90 % intervals that hold the truth 90 times in 100, damping drawn as it is known', () => {
    const random = normals(21);
    const count = 300;
    let held = 0;
    for (let i = 0; i < count; i++) {
      const truth = { absorption: 0.7, damping: Math.exp(DAMPING_LOG_SD * random()) };
      const noisy = readings(MIXED, truth, () => RING * random());
      const result = fitDropTest(scene, noisy, RING, DAMPING_LOG_SD);
      if (result.status !== 'fitted') continue;
      if (result.absorption.lower < 0.7 && result.absorption.upper > 0.7) held += 1;
    }
    // Binomial standard deviation 1.7 %; widening by chance scatter above 1 makes the intervals a little wide.
    expect(held / count).toBeGreaterThan(0.86);
    expect(held / count).toBeLessThan(0.98);
  });

  it('leaves readings at full travel out and counts them', () => {
    const plan: SetUp[] = [...MIXED, [0, 50, 1.2]];
    const result = fitDropTest(scene, readings(plan, { absorption: 0.7, damping: 1 }), RING, DAMPING_LOG_SD);
    if (result.status !== 'fitted') throw new Error(result.message);
    expect(result.atFullTravel).toBe(1);
    expect(result.absorption.value).toBeCloseTo(0.7, 3);
  });

  it('warns of set-ups tried in order, of drift, of scatter and of no repeats', () => {
    const truth = { absorption: 0.7, damping: 1 };
    const warnings = (plan: readonly SetUp[], error?: (i: number) => number) => {
      const result = fitDropTest(scene, readings(plan, truth, error), RING, DAMPING_LOG_SD);
      return result.status === 'fitted' ? result.warnings : [];
    };
    const ordered = [0, 0, 1, 1, 2, 2, 3, 3].map((n): SetUp => [n, 65, 0.6]);
    expect(warnings(ordered)).toContain('order-follows-set-up');
    expect(warnings(MIXED, (i) => 0.0012 * (i - 3.5))).toContain('drift');
    expect(warnings(MIXED, (i) => (i % 2 === 0 ? 0.008 : -0.008))).toContain('scatter');
    expect(warnings(MIXED.slice(0, 4))).toContain('no-repeats');
  });

  it('refuses one reading, and readings all at full travel', () => {
    const all = readings(MIXED, { absorption: 0.7, damping: 1 });
    expect(fitDropTest(scene, all.slice(0, 1), RING, DAMPING_LOG_SD)).toMatchObject({ reason: 'too-few-readings' });
    const full = all.map((landing) => ({ ...landing, travelUsed: g.S }));
    expect(fitDropTest(scene, full, RING, DAMPING_LOG_SD)).toMatchObject({ reason: 'too-few-readings' });
  });

  it('throws for landings that cannot be', () => {
    const [first] = readings(MIXED, { absorption: 0.7, damping: 1 });
    if (first === undefined) throw new Error('no reading');
    for (const change of [{ dropHeight: 0 }, { travelUsed: 0.2 }, { spacers: 9 }, { travelUsed: NaN }]) {
      expect(() => fitDropTest(scene, [first, { ...first, ...change }], RING, DAMPING_LOG_SD)).toThrow(SpringInputError);
    }
  });
});

describe('rebound step', () => {
  const spring = (spacers: number, psi: number) =>
    airSpring(scene.unit, { ...scene.fill, spacers, gaugePressure: gaugePascalFromPsi(psi) });

  it('asks for slower rebound on a stiffer spring, faster on a softer one, none on the same', () => {
    expect(reboundStep(spring(0, 65), spring(0, 85), scene.end)).toMatchObject({ direction: 'slower' });
    expect(reboundStep(spring(0, 65), spring(0, 50), scene.end)).toMatchObject({ direction: 'faster' });
    expect(reboundStep(spring(1, 65), spring(1, 65), scene.end)).toMatchObject({ direction: 'keep', rateRatio: 1 });
  });

  it('goes by the square root of the spring rate, and says so where there is no sag', () => {
    const step = reboundStep(spring(0, 65), spring(4, 65), scene.end);
    if (step.status !== 'told') throw new Error(step.status);
    expect(step.dampingRatio ** 2).toBeCloseTo(step.rateRatio, 12);
    const crushed = { ...scene.end, sprungMass: 400 };
    expect(reboundStep(spring(0, 65), spring(4, 65), crushed).status).toBe('no-sag');
  });
});
