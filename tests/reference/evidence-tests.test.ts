import { describe, expect, it } from 'vitest';
import { commonFactor, maxTCritical, maxTTail } from '../../libs/evidence/src/compare/max-t.js';
import { fitVariancePrior, moderateVariance, squeeze } from '../../libs/evidence/src/compare/moderated-variance.js';
import { compareRatings } from '../../libs/evidence/src/compare/ratings.js';
import { differenceTest, equivalenceTest, holmAdjusted } from '../../libs/evidence/src/compare/tests.js';
import { tUpperQuantile } from '../../libs/evidence/src/numerics/distributions.js';
import { reference } from './evidence-reference.js';

const list = <T>(value: T | T[]): T[] => (Array.isArray(value) ? value : [value]);

describe('moderated variance', () => {
  interface Case {
    var: number | number[];
    df: number | number[];
    prior_var: number;
    prior_df: number | 'Inf';
    posterior_var: number | number[];
  }
  const { result } = reference<{ result: Record<string, Case> }>('limma_squeezeVar');
  // The zero variance is dropped by design, which limma does not do: see the next test.
  const cases = Object.entries(result).filter(([name]) => name.startsWith('case_') && name !== 'case_zero_variance');

  it.each(cases)('%s', (_, expected) => {
    const df = list(expected.df);
    const history = list(expected.var).map((variance, i) => ({ variance, df: df[i] as number }));
    const prior = fitVariancePrior(history);
    if (expected.prior_df === 'Inf') expect(prior.df).toBe(Number.POSITIVE_INFINITY);
    else if (expected.prior_df === 0) expect(prior.df).toBe(0);
    // File: prior degrees of freedom relative 1e-6, variances 1e-8.
    else expect(Math.abs(prior.df / expected.prior_df - 1)).toBeLessThan(1e-6);
    expect(Math.abs(prior.variance / expected.prior_var - 1)).toBeLessThan(1e-8);
    for (const [i, posterior] of list(expected.posterior_var).entries()) {
      expect(Math.abs(squeeze(history[i] as (typeof history)[0], prior) / posterior - 1)).toBeLessThan(1e-8);
    }
  });

  it('leaves out a session of variance 0, which would pull the prior to nearly nothing', () => {
    const { var: variances, df } = result.case_zero_variance as Case;
    const history = list(variances).map((variance, i) => ({ variance, df: list(df)[i] as number }));
    const prior = fitVariancePrior(history);
    expect(prior.dropped).toBe(1);
    expect(prior).toEqual({ ...fitVariancePrior(history.filter(({ variance }) => variance > 0)), dropped: 1 });
  });

  it('a short history does not moderate, and no history with no degrees of freedom says nothing', () => {
    const session = { variance: 1e-4, df: 3 };
    const three = Array.from({ length: 3 }, () => ({ variance: 2e-4, df: 4 }));
    expect(moderateVariance(session, three)).toEqual({ ...session, source: 'this session' });
    expect(moderateVariance({ variance: 0, df: 0 }, three)).toBeNull();
    const ten = Array.from({ length: 10 }, (_, i) => ({ variance: 1e-4 * (1 + i), df: 4 }));
    const moderated = moderateVariance(session, ten);
    expect(moderated?.source).toBe('moderated by history');
    expect(moderated?.df).toBeGreaterThan(3);
  });
});

describe('several set-ups against one', () => {
  const { result } = reference<{
    result: {
      plantgrowth: { t: number[]; p_exact: number[]; crit95: number };
      critical95_equal_n: Record<'k' | 'df' | 'q95', number[]>;
    };
  }>('dunnett');

  it('critical values of equal groups', () => {
    const { k, df, q95 } = result.critical95_equal_n;
    for (const [i, expected] of q95.entries()) {
      const half = new Array<number>(k[i] as number).fill(Math.SQRT1_2);
      // File: absolute 1e-6.
      expect(Math.abs(maxTCritical(0.05, half, df[i] as number) - expected), `k ${k[i]} df ${df[i]}`).toBeLessThan(1e-6);
    }
  });

  it('PlantGrowth: adjusted P values and the critical value', () => {
    const { loadings } = commonFactor([
      [1, 0.5],
      [0.5, 1],
    ]);
    const { t, p_exact, crit95 } = result.plantgrowth;
    for (const [i, expected] of p_exact.entries()) {
      expect(Math.abs(maxTTail(Math.abs(t[i] as number), loadings, 27) - expected)).toBeLessThan(1e-6);
    }
    expect(Math.abs(maxTCritical(0.05, loadings, 27) - crit95)).toBeLessThan(1e-6);
  });

  it('unequal correlations of three differences are met exactly by one common factor', () => {
    const session = reference<{
      result: {
        vs_A: Record<'t' | 'p_raw' | 'p_holm' | 'p_maxt', number[]> & { corr: number[][]; crit_maxt95: number };
      };
    }>('session_trend_example').result.vs_A;
    const { loadings, worstError } = commonFactor(session.corr);
    expect(worstError).toBeLessThan(1e-9);
    for (const [i, expected] of session.p_maxt.entries()) {
      // File: absolute 2e-5 and 5e-4, its own quasi-Monte-Carlo error.
      expect(Math.abs(maxTTail(Math.abs(session.t[i] as number), loadings, 6) - expected)).toBeLessThan(2e-5);
    }
    expect(Math.abs(maxTCritical(0.05, loadings, 6) - session.crit_maxt95)).toBeLessThan(5e-4);
    for (const [i, expected] of holmAdjusted(session.p_raw).entries()) {
      expect(expected).toBeCloseTo(session.p_holm[i] as number, 12);
    }
  });

  it('Holm on PlantGrowth', () => {
    const { pairwise_pooled_sd: pairs } = reference<{
      result: { pairwise_pooled_sd: { raw: number[]; holm: number[] } };
    }>('lm_plantgrowth').result;
    for (const [i, p] of holmAdjusted(pairs.raw).entries()) expect(p).toBeCloseTo(pairs.holm[i] as number, 12);
  });
});

describe('difference and equivalence', () => {
  interface Tost {
    margin: number;
    estimate: number;
    se: number;
    df: number;
    p_low: number;
    p_high: number;
    p_tost: number;
    ci90: [number, number];
  }
  const sleep = reference<{ result: { paired: { t: number; df: number; p: number }; tost_paired: Tost[] } }>('ttest_tost_sleep');
  const contrasts = reference<{ result: Record<string, Tost[]> }>('tost_lm_contrast');
  const rows = [...sleep.result.tost_paired, ...Object.values(contrasts.result).flat()];

  it.each(rows.map((row) => [row.margin, row] as const))('within ± %d', (_, row) => {
    const { pLow, pHigh, p } = equivalenceTest(row.estimate, row.se, row.df, row.margin);
    // File: relative 1e-10 (1e-9 for P values of the sleep data).
    for (const [got, expected] of [
      [pLow, row.p_low],
      [pHigh, row.p_high],
      [p, row.p_tost],
    ] as const) {
      expect(Math.abs(got / expected - 1)).toBeLessThan(1e-9);
    }
    const half = tUpperQuantile(0.05, row.df) * row.se;
    expect(Math.abs((row.estimate - half) / row.ci90[0] - 1)).toBeLessThan(1e-9);
  });

  it('paired t of the sleep data', () => {
    const { t, df, p } = sleep.result.paired;
    expect(Math.abs(differenceTest(t, 1, df) / p - 1)).toBeLessThan(1e-9);
  });
});

describe('ratings', () => {
  const { result } = reference<{
    result: {
      a: number | number[];
      b: number | number[];
      prob_superiority: number;
      p_two_sided_exact: number;
      min_attainable_p: number;
    }[];
  }>('ordinal_exact_permutation');

  it.each(result.map((row) => [JSON.stringify(row.a), JSON.stringify(row.b), row] as const))('%s against %s', (_, __, row) => {
    const got = compareRatings([{ a: list(row.a), b: list(row.b) }]);
    // File: exact to 1e-12.
    expect(got.superiority).toBeCloseTo(row.prob_superiority, 12);
    expect(got.p).toBeCloseTo(row.p_two_sided_exact, 12);
    expect(got.smallestP).toBeCloseTo(row.min_attainable_p, 12);
  });
});
