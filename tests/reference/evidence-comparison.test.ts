import { compareSetUps, type ComparisonRun } from '@loamledger/evidence';
import { describe, expect, it } from 'vitest';
import { levelAtLook } from '../../libs/evidence/src/compare/look-levels.js';
import { differenceTest, equivalenceTest, holmAdjusted } from '../../libs/evidence/src/compare/tests.js';
import { fitRuns, type TimedRun } from '../../libs/evidence/src/compare/time-model.js';
import { verdictOf, type Verdict } from '../../libs/evidence/src/compare/verdict.js';
import { normals, uniforms } from './evidence-numbers.js';
import { reference } from './evidence-reference.js';
import { teamTrend } from './team-trend.js';

const relative = (got: number | null | undefined, expected: number): number => Math.abs((got ?? Number.NaN) / expected - 1);

describe('one rider, four set-ups, twelve runs, one void', () => {
  const { data, result } = reference<{
    data: { run: number[]; setup: string[]; time_s: number[]; void: boolean[] };
    result: {
      vs_A: Record<'setup', string[]> &
        Record<'estimate' | 'percent' | 'se' | 'p_holm' | 'p_tost' | 'ci_maxt_low' | 'ci_maxt_high', number[]>;
      pairs_linear: { estimate: number[]; low: number[]; high: number[] };
    };
  }>('session_trend_example');
  const runs = data.run.map((position, i): ComparisonRun => ({
    arm: data.setup[i] as string,
    rider: 'one',
    session: 'one',
    position,
    time: data.time_s[i] as number,
    voided: data.void[i] as boolean,
  }));
  const request = { runs, current: 'A', margin: 0.01, history: [], look: null, trend: 'linear' } as const;
  const comparison = compareSetUps(request);

  it('differences, standard errors and adjusted P values', () => {
    for (const [i, arm] of result.vs_A.setup.entries()) {
      const got = comparison.arms.find((entry) => entry.arm === arm);
      // File: relative 1e-9 for the linear model.
      expect(relative(got?.difference, result.vs_A.estimate[i] as number)).toBeLessThan(1e-9);
      expect(relative(got?.se, result.vs_A.se[i] as number)).toBeLessThan(1e-9);
      expect(relative((got?.share ?? 0) * 100, result.vs_A.percent[i] as number)).toBeLessThan(1e-9);
      expect(relative(got?.pDifference, result.vs_A.p_holm[i] as number)).toBeLessThan(1e-9);
    }
    expect(comparison.variance?.df).toBe(6);
  });

  it('simultaneous intervals', () => {
    for (const [i, arm] of result.vs_A.setup.entries()) {
      const interval = comparison.arms.find((entry) => entry.arm === arm)?.interval;
      // File: critical value absolute 5e-4, times a standard error of 0.009.
      expect(Math.abs((interval?.low ?? 0) - (result.vs_A.ci_maxt_low[i] as number))).toBeLessThan(5e-6);
      expect(Math.abs((interval?.high ?? 0) - (result.vs_A.ci_maxt_high[i] as number))).toBeLessThan(5e-6);
    }
  });

  it('one-sided tests against the margin before adjustment (file: margin 0.01 on the log scale)', () => {
    const model = fitRuns(
      runs.filter((run): run is TimedRun => !run.voided),
      'A',
      'linear',
    );
    for (const [i, difference] of (model?.differences ?? []).entries()) {
      const se = Math.sqrt((model?.variance ?? 0) * difference.unscaledVariance);
      const { p } = equivalenceTest(difference.estimate, se, 6, 0.01);
      expect(relative(p, result.vs_A.p_tost[i] as number)).toBeLessThan(1e-8);
    }
  });

  it('cannot tell any of them yet, and says how many runs it would take', () => {
    for (const arm of comparison.arms) {
      expect(arm.verdict).toBe('cannot tell yet');
      expect(arm.needed?.forEquivalence).toBeGreaterThan(0);
      expect(arm.sentence).toMatch(/may be chance/);
    }
    expect(comparison.counts).toEqual({ runs: 12, voided: 1, untimed: 0, timed: 11 });
  });
});

describe('five riders on mirrored Williams orders', () => {
  const { runs, result } = teamTrend<{
      fixed_riders_common_trend: {
        coefficients: { term: string[]; estimate: number[]; se: number[] };
        df_residual: number;
      };
      KR_vs_A: { p: number[] };
    }>();

  it('by the scatter between runs, for these riders', () => {
    const { coefficients, df_residual } = result.fixed_riders_common_trend;
    const model = fitRuns(runs, 'A', 'linear');
    expect(model?.residualDf).toBe(df_residual);
    for (const { arm, estimate, unscaledVariance } of model?.differences ?? []) {
      const at = coefficients.term.findIndex((term) => term === `setup${arm}`);
      expect(relative(estimate, coefficients.estimate[at] as number)).toBeLessThan(1e-9);
      const se = Math.sqrt((model?.variance ?? 0) * unscaledVariance);
      expect(relative(se, coefficients.se[at] as number)).toBeLessThan(1e-9);
    }
  });

  it('finds D slower and says that it holds for riders in general', () => {
    const comparison = compareSetUps({ runs, current: 'A', margin: 0.01, history: [], look: null, trend: 'linear' });
    expect(comparison.arms.map((arm) => arm.verdict)).toEqual(['cannot tell yet', 'cannot tell yet', 'slower']);
    expect(comparison.sentences.join(' ')).toMatch(/riders in general/);
    // Holm: the smallest of three P values counts three times. File: KR relative 1e-3, which t = 3.2 makes 5e-3.
    expect(relative(comparison.arms[2]?.pDifference, 3 * (result.KR_vs_A.p[2] as number))).toBeLessThan(5e-3);
  });
});

/** Times of one session: an order of arms, effects on the log scale, a trend and the scatter of the reference. */
function session(arms: readonly string[], effects: Record<string, number>, normal: () => number): TimedRun[] {
  const SCATTER = 0.012;
  const TREND = -0.001;
  return arms.map((arm, i) => ({
    arm,
    rider: 'one',
    session: 'one',
    position: i + 1,
    time: 180 * Math.exp((effects[arm] ?? 0) + TREND * i + SCATTER * normal()),
    voided: false,
  }));
}

function verdictsOf(runs: readonly TimedRun[], alpha: number): Verdict[] {
  const model = fitRuns(runs, 'A', 'linear');
  if (model === null) return [];
  const margin = Math.log1p(0.01);
  const se = model.differences.map((d) => Math.sqrt(model.variance * d.unscaledVariance));
  const at = (i: number): number => se[i] as number;
  const df = model.residualDf;
  const p = holmAdjusted(model.differences.map((d, i) => differenceTest(d.estimate, at(i), df)));
  const q = holmAdjusted(model.differences.map((d, i) => equivalenceTest(d.estimate, at(i), df, margin).p));
  return model.differences.map(
    ({ estimate }, i) =>
      verdictOf(
        {
          estimate,
          se: at(i),
          df,
          pDifference: p[i] as number,
          pEquivalence: q[i] as number,
          alpha,
          margin,
          borrowed: false,
          whom: 'these riders',
        },
        null,
      ).verdict,
  );
}

describe('how often a verdict is wrong or right', () => {
  interface Row {
    mirrored_blocks: number;
    runs_per_setup: number;
    effects: number[];
    fwer_false_faster_or_slower: number;
    fwer_false_equivalence: number;
    per_setup: Record<'decided_faster' | 'decided_slower' | 'equivalent' | 'cannot_tell', number[]>;
  }
  const { result } = reference<{ result: Row[] }>('verdict_simulation');
  const SIMULATIONS = 600;
  /** Four standard errors of a share of 600, plus the file's own 0.0035. */
  const tolerance = (share: number): number => 4 * Math.sqrt(Math.max(share, 0.01) / SIMULATIONS) + 0.0035;

  it.each(result.map((row) => [row.mirrored_blocks, row.effects.join(', '), row] as const))(
    '%i mirrored blocks, effects %s',
    (_, __, row) => {
      const normal = normals(uniforms(1000 * row.mirrored_blocks + Math.round(1e4 * (row.effects[1] ?? 0))));
      const half = ['A', 'B', 'C', 'D'];
      const order = Array.from({ length: row.mirrored_blocks }, () => [...half, ...half.toReversed()]).flat();
      const effects = Object.fromEntries(['B', 'C', 'D'].map((arm, i) => [arm, row.effects[i] as number]));
      const counts = row.effects.map(() => ({ faster: 0, slower: 0, equivalent: 0 }));
      let wrong = 0;
      for (let n = 0; n < SIMULATIONS; n += 1) {
        const verdicts = verdictsOf(session(order, effects, normal), 0.05);
        for (const [i, verdict] of verdicts.entries()) {
          const count = counts[i] as (typeof counts)[0];
          if (verdict === 'faster') count.faster += 1;
          if (verdict === 'slower') count.slower += 1;
          if (verdict === 'no practical difference') count.equivalent += 1;
        }
        wrong += Number(
          verdicts.some((verdict, i) => {
            const effect = row.effects[i] as number;
            return (verdict === 'faster' && effect >= 0) || (verdict === 'slower' && effect <= 0);
          }),
        );
      }
      expect(wrong / SIMULATIONS).toBeLessThan(0.05 + tolerance(0.05));
      for (const [i, count] of counts.entries()) {
        for (const [got, expected] of [
          [count.faster, row.per_setup.decided_faster[i] as number],
          [count.slower, row.per_setup.decided_slower[i] as number],
          [count.equivalent, row.per_setup.equivalent[i] as number],
        ] as const) {
          expect(Math.abs(got / SIMULATIONS - expected)).toBeLessThan(tolerance(expected));
        }
      }
    },
  );

  it('looking after every block of four, up to ten times, is as seldom wrong as the reference when the rate is spent, and as often when it is not', () => {
    const LOOKS = 10;
    const SESSIONS = 1500;
    const { result: stopping } = reference<{ result: { one_over_b_b1: number[]; naive_05_every_block: number[] } }>(
      'optional_stopping',
    );
    const rate = (alpha: (look: number) => number): number => {
      const normal = normals(uniforms(77));
      let wrong = 0;
      for (let n = 0; n < SESSIONS; n += 1) {
        const order = Array.from({ length: LOOKS }, () => ['A', 'B', 'B', 'A']).flat();
        const runs = session(order, {}, normal);
        for (let look = 1; look <= LOOKS; look += 1) {
          const model = fitRuns(runs.slice(0, 4 * look), 'A', 'linear');
          const difference = model?.differences[0];
          if (model === null || difference === undefined) continue;
          const se = Math.sqrt(model.variance * difference.unscaledVariance);
          if (differenceTest(difference.estimate, se, model.residualDf) < alpha(look)) {
            wrong += 1;
            break;
          }
        }
      }
      return wrong / SESSIONS;
    };
    const spent = rate((number) => levelAtLook(0.05, { number, of: null }, 1));
    const known = rate((number) => levelAtLook(0.05, { number, of: LOOKS }, 1));
    const naive = rate(() => 0.05);
    // Four standard errors of shares of 1,500 (0.5 % and 1.05 %); the file has no trend in its model, which moves less.
    expect(Math.abs(spent - (stopping.one_over_b_b1.at(-1) as number))).toBeLessThan(0.02);
    // Spent over a number of looks that is known, all of it is used, and no more (three standard errors).
    expect(known).toBeLessThan(0.05 + 0.017);
    expect(known).toBeGreaterThan(0.05 - 0.017);
    expect(Math.abs(naive - (stopping.naive_05_every_block.at(-1) as number))).toBeLessThan(0.042);
  });
});
