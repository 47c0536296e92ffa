import { compareSetUps, type Comparison } from '@loamledger/evidence';
import { describe, expect, it } from 'vitest';
import { differenceTest } from '../../libs/evidence/src/compare/tests.js';
import { fitRuns, type TimedRun } from '../../libs/evidence/src/compare/time-model.js';
import { binomialUpperTail } from '../../libs/evidence/src/numerics/binomial.js';
import { normals, uniforms } from './evidence-numbers.js';

/** Scatter between runs, and standard deviation over riders of what the second set-up does for them; log time. */
const SCATTER = 0.012;
const SUITS = 0.01;
const RIDERS_DIFFER = 0.05;
const TREND = -0.001;

interface Team {
  riders: number;
  arms: string;
  runsAnArm: number;
  /** Runs whose time is lost, drawn. */
  lost: number;
  /** What the other set-ups do for riders in general. */
  effect: number;
}

/** A plan that a simulated team has ridden, arms mirrored and turned from rider to rider. */
function ridden(team: Team, uniform: () => number): TimedRun[] {
  const normal = normals(uniform);
  const runs = Array.from({ length: team.riders }, (_, r) => {
    const level = RIDERS_DIFFER * normal();
    const letters = [...team.arms];
    const turned = [...letters.slice(r % letters.length), ...letters.slice(0, r % letters.length)];
    const suits = new Map(
      letters.map((arm) => [arm, (arm === 'A' ? 0 : team.effect) + (SUITS / Math.SQRT2) * normal()]),
    );
    const order = Array.from({ length: team.runsAnArm }, (__, i) => (i % 2 === 0 ? turned : turned.toReversed()));
    return order.flat().map((arm, i): TimedRun => ({
      arm,
      rider: `rider ${r}`,
      session: 'one',
      position: i + 1,
      voided: false,
      time: 180 * Math.exp(level + (suits.get(arm) ?? 0) + TREND * i + SCATTER * normal()),
    }));
  }).flat();
  for (let i = 0; i < team.lost; i += 1) runs.splice(Math.floor(uniform() * runs.length), 1);
  return runs;
}

const compare = (runs: readonly TimedRun[]): Comparison =>
  compareSetUps({ runs, current: 'A', margin: 0.01, history: [], look: null, trend: 'linear' });

const toldApart = ({ arms }: Comparison): boolean =>
  arms.some(({ verdict }) => verdict === 'faster' || verdict === 'slower');

/** Simulated plans on two set-ups, and on several, whose intervals take longer. */
const PLANS = 400;
const PLANS_ON_SEVERAL = 60;
/** Generous: some machines share two processors among many. */
const LONG_MS = 180_000;

describe('plans over several riders whom set-ups suit differently', () => {
  it.each<[string, Team]>([
    ['five riders, two set-ups, one time lost', { riders: 5, arms: 'AB', runsAnArm: 6, lost: 1, effect: 0 }],
    ['the same, ten times lost', { riders: 5, arms: 'AB', runsAnArm: 6, lost: 10, effect: 0 }],
    ['two riders, four set-ups, three times lost', { riders: 2, arms: 'ABCD', runsAnArm: 4, lost: 3, effect: 0 }],
    ['four riders, three set-ups, five times lost', { riders: 4, arms: 'ABC', runsAnArm: 3, lost: 5, effect: 0 }],
  ])('say faster or slower by chance in no more than 5 of 100: %s', (_, team) => {
    const uniform = uniforms(101 * team.riders + team.lost);
    const plans = team.arms.length === 2 ? PLANS : PLANS_ON_SEVERAL;
    let wrong = 0;
    for (let n = 0; n < plans; n += 1) wrong += Number(toldApart(compare(ridden(team, uniform))));
    // At a true share of 5 in 100 so many or more would come up less than once in a thousand times.
    expect(binomialUpperTail(wrong, plans, 0.05)).toBeGreaterThan(1e-3);
  }, LONG_MS);

  it('the scatter between runs alone would say so far more often: what riders differ in is what these tests hold', () => {
    const uniform = uniforms(506);
    let wrong = 0;
    for (let n = 0; n < PLANS; n += 1) {
      const runs = ridden({ riders: 5, arms: 'AB', runsAnArm: 6, lost: 1, effect: 0 }, uniform);
      const model = fitRuns(runs, 'A', 'linear');
      const [difference] = model?.differences ?? [];
      const se = Math.sqrt((model?.variance ?? 0) * (difference?.unscaledVariance ?? 0));
      wrong += Number(differenceTest(difference?.estimate ?? 0, se, model?.residualDf ?? 0) < 0.05);
    }
    expect(wrong / PLANS).toBeGreaterThan(0.12);
  });

  it('find what suits riders in general', () => {
    const uniform = uniforms(8);
    const FEW = 40;
    let found = 0;
    for (let n = 0; n < FEW; n += 1) {
      const { arms } = compare(ridden({ riders: 8, arms: 'AB', runsAnArm: 6, lost: 3, effect: -0.03 }, uniform));
      found += Number(arms[0]?.verdict === 'faster');
    }
    // Standard error √(1 %²/8 + 2·1.2 %²/48) = 0.43 % on some 7 degrees of freedom: 3 % is 7 of them.
    expect(found / FEW).toBeGreaterThan(0.9);
  });

  it('too few riders: a lost time changes nothing, and what holds for these riders is a sentence, never the verdict', () => {
    const uniform = uniforms(3);
    const whole = ridden({ riders: 3, arms: 'AB', runsAnArm: 8, lost: 0, effect: -0.03 }, uniform);
    for (const runs of [whole, whole.slice(1), whole.slice(0, -3)]) {
      const [arm] = compare(runs).arms;
      expect(arm?.verdict).toBe('cannot tell yet');
      expect(Math.round(arm?.df ?? 0)).toBe(2);
      expect(arm?.sentence).toMatch(/at least 4 riders.*For these 3 riders only: faster \(-\d\.\d %\)/);
      expect(arm?.needed).toBeNull();
    }
  });

  it('an arm that one rider alone compared: nothing can be told of riders in general', () => {
    const runs = ridden({ riders: 2, arms: 'AB', runsAnArm: 6, lost: 0, effect: -0.04 }, uniforms(4));
    const [arm] = compare(runs.filter(({ rider, arm: on }) => rider === 'rider 0' || on === 'A')).arms;
    expect(arm?.verdict).toBe('cannot tell yet');
    expect(arm?.interval).toBeNull();
    expect(arm?.sentence).toMatch(/do not show how riders differ.*For these 2 riders only: faster/);
  });

  it('past sessions moderate the reading for these riders, not the verdict for riders in general', () => {
    const runs = ridden({ riders: 5, arms: 'AB', runsAnArm: 4, lost: 2, effect: 0 }, uniforms(6));
    const history = Array.from({ length: 12 }, (_, i) => ({ variance: 1e-6 * (1 + 0.1 * i), df: 6 }));
    const request = { runs, current: 'A', margin: 0.01, look: null, trend: 'linear' } as const;
    const alone = compareSetUps({ ...request, history: [] });
    expect(compareSetUps({ ...request, history }).arms).toEqual(alone.arms);
    expect(alone.variance?.source).toBe('this session');
  });
});
