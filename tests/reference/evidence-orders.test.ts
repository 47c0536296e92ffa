import { describe, expect, it } from 'vitest';
import { bestOrder } from '../../libs/evidence/src/plan/order-search.js';
import { scoreOrder } from '../../libs/evidence/src/plan/order-score.js';
import {
  detectableDifference,
  powerOfDifference,
  powerOfEquivalence,
  runsForPower,
} from '../../libs/evidence/src/plan/power.js';
import { reference } from './evidence-reference.js';

interface Score {
  avg_var: number;
  max_vif: number;
  mean_vif: number;
  df: number;
}
interface BestOrder {
  possible: boolean;
  order?: string;
  avg_var?: number;
}

const orders = reference<{
  result: {
    cases: Record<string, { linear: Score | null; quadratic: Score | null }>;
    best_single_rider: Record<string, BestOrder>;
  };
}>('order_efficiency').result;

const armsOf = (letters: string): number[] => [...letters].map((letter) => letter.charCodeAt(0) - 'A'.charCodeAt(0));

describe('variance of an order against the ideal', () => {
  it.each(Object.entries(orders.cases))('%s', (letters, { linear, quadratic }) => {
    for (const [trend, expected] of [
      ['linear', linear],
      ['quadratic', quadratic],
    ] as const) {
      if (expected === null) continue;
      const score = scoreOrder(armsOf(letters), trend);
      expect(score.residualDf).toBe(expected.df);
      // Two least-squares codes in double precision: 1e-9.
      expect(score.maxInflation).toBeCloseTo(expected.max_vif, 9);
      expect(score.meanInflation).toBeCloseTo(expected.mean_vif, 9);
      expect(score.meanVariance).toBeCloseTo(expected.avg_var, 9);
    }
  });

  it.each(Object.entries(orders.best_single_rider))('the search finds as good an order for %s', (name, best) => {
    const [, k = 0, r = 0] = (/k=(\d+),r=(\d+)/.exec(name) ?? []).map(Number);
    const places = Array.from({ length: k * r }, (_, i) => i + 1);
    const score = scoreOrder(bestOrder(new Array<number>(k).fill(r), places, 7), 'linear');
    if (!best.possible) expect(score.meanVariance).toBeNull();
    else expect(score.meanVariance).toBeLessThan((best.avg_var as number) + 1e-9);
  });
});

const power = reference<{
  result: {
    n_two_sample_per_group: Record<'delta' | 'sd' | 'power' | 'n_strict', number[]>;
    power_two_sample: Record<'n' | 'delta' | 'sd' | 'power_strict', number[]>;
  };
}>('power_t').result;
const tost = reference<{ result: { power: Record<'n' | 'delta' | 'sd' | 'm' | 'power', number[]> } }>('power_tost').result;

const twoSample = (n: number) => ({ unscaledSe: Math.sqrt(2 / n), df: 2 * (n - 1), alpha: 0.05 });

describe('power', () => {
  it('of a difference between two arms', () => {
    const { n, delta, sd, power_strict } = power.power_two_sample;
    for (const [i, expected] of power_strict.entries()) {
      const got = powerOfDifference(delta[i] as number, sd[i] as number, twoSample(n[i] as number));
      expect(Math.abs(got - expected), `n ${n[i]}`).toBeLessThan(1e-9);
    }
  });

  it('runs needed are the next whole number above the exact solution', () => {
    const { delta, sd, power: wanted, n_strict } = power.n_two_sample_per_group;
    for (const [i, n] of n_strict.entries()) {
      const found = runsForPower(
        (runs) => powerOfDifference(delta[i] as number, sd[i] as number, twoSample(runs)),
        wanted[i],
      );
      expect(found).toBe(Math.ceil(n));
    }
  });

  it('of an equivalence within a margin', () => {
    const { n, delta, sd, m, power: expected } = tost.power;
    for (const [i, value] of expected.entries()) {
      const got = powerOfEquivalence(delta[i] as number, m[i] as number, sd[i] as number, {
        ...twoSample(n[i] as number),
        alpha: 0.05,
      });
      expect(Math.abs(got - value), `n ${n[i]}`).toBeLessThan(1e-8);
    }
  });

  it('no practical difference at 1 % with 1.2 % scatter takes 26 runs an arm, at 1.5 % it takes 12', () => {
    const runs = (margin: number) =>
      runsForPower((r) => powerOfEquivalence(0, margin, 0.012, { ...twoSample(r), alpha: 0.05 }));
    expect(runs(0.01)).toBe(26);
    expect(runs(0.015)).toBe(12);
  });

  it('the detectable difference is the one found with the wanted power', () => {
    const difference = detectableDifference(0.012, twoSample(8));
    expect(powerOfDifference(difference, 0.012, twoSample(8))).toBeCloseTo(0.8, 9);
  });
});
