import { describe, expect, it } from 'vitest';
import { fitRiders } from '../../libs/evidence/src/compare/rider-model.js';
import { differenceTest } from '../../libs/evidence/src/compare/tests.js';
import { fitRuns, type TimedRun } from '../../libs/evidence/src/compare/time-model.js';
import { kenwardRoger } from '../../libs/evidence/src/linear/kenward-roger.js';
import { leastSquares } from '../../libs/evidence/src/linear/least-squares.js';
import { fitMixed } from '../../libs/evidence/src/linear/mixed-model.js';
import { reference } from './evidence-reference.js';
import { teamTrend } from './team-trend.js';

const relative = (got: number | null | undefined, expected: number): number =>
  Math.abs((got ?? Number.NaN) / expected - 1);

/** A mixed model of a table, with the number of each group. */
function fitTable(x: number[][], y: number[], groups: readonly string[]) {
  const names = [...new Set(groups)];
  const mixed = fitMixed(
    x,
    leastSquares(x, y),
    groups.map((name) => names.indexOf(name)),
  );
  if (mixed === null) throw new Error('The table leaves nothing of its groups.');
  return mixed;
}

/** −2 log restricted likelihood as the files count it: with log det XᵀX of one or two columns. */
function wholeCriterion(x: number[][], criterion: number): number {
  const sum = (a: number, b: number): number =>
    x.reduce((total, row) => total + (row[a] as number) * (row[b] as number), 0);
  const determinant = x[0]?.length === 1 ? sum(0, 0) : sum(0, 0) * sum(1, 1) - sum(0, 1) ** 2;
  return criterion + Math.log(determinant);
}

describe('one random level a group, open data', () => {
  const { data, result } = reference<{
    data: Record<'Dyestuff' | 'Dyestuff2', { Yield: number[]; Batch: string[] }>;
    result: Record<
      'Dyestuff' | 'Dyestuff2',
      {
        fixef: Record<'(Intercept)', number>;
        fixef_se: Record<'(Intercept)', number>;
        varcorr: { sdcor: [number, number] };
        deviance_or_remlcrit: number;
      }
    >;
  }>('lme4_dyestuff');

  it('batches that differ: restricted likelihood, standard deviations, mean with its standard error', () => {
    const { Yield, Batch } = data.Dyestuff;
    const expected = result.Dyestuff;
    const x = Yield.map(() => [1]);
    const mixed = fitTable(x, Yield, Batch);
    // File: sd relative 1e-4; its optimiser stops there.
    expect(relative(Math.sqrt(mixed.cellVariance), expected.varcorr.sdcor[0])).toBeLessThan(1e-4);
    expect(relative(Math.sqrt(mixed.rowVariance), expected.varcorr.sdcor[1])).toBeLessThan(1e-4);
    expect(Math.abs(wholeCriterion(x, mixed.criterion) - expected.deviance_or_remlcrit)).toBeLessThan(1e-5);
    const { contrasts } = kenwardRoger(mixed, [[1]]);
    expect(relative(contrasts[0]?.estimate, expected.fixef['(Intercept)'])).toBeLessThan(1e-9);
    // Balanced: the adjustment is nothing, and the mean of 6 batches has the 5 degrees of freedom of their means.
    expect(relative(contrasts[0]?.se, expected.fixef_se['(Intercept)'])).toBeLessThan(1e-4);
    expect(relative(contrasts[0]?.df, 5)).toBeLessThan(1e-6);
  });

  it('batches that differ less than chance: the standard deviation is 0, the degrees of freedom are still those of batches', () => {
    const { Yield, Batch } = data.Dyestuff2;
    const expected = result.Dyestuff2;
    const x = Yield.map(() => [1]);
    const mixed = fitTable(x, Yield, Batch);
    expect(mixed.cellVariance).toBe(0);
    expect(relative(Math.sqrt(mixed.rowVariance), expected.varcorr.sdcor[1])).toBeLessThan(1e-4);
    expect(Math.abs(wholeCriterion(x, mixed.criterion) - expected.deviance_or_remlcrit)).toBeLessThan(1e-5);
    const { contrasts } = kenwardRoger(mixed, [[1]]);
    expect(relative(contrasts[0]?.estimate, expected.fixef['(Intercept)'])).toBeLessThan(1e-6);
    expect(relative(contrasts[0]?.se, expected.fixef_se['(Intercept)'])).toBeLessThan(1e-4);
    expect(relative(contrasts[0]?.df, 5)).toBeLessThan(1e-6);
  });

  it('a slope within groups: fixed terms, standard errors, likelihood', () => {
    const { data: sleep, result: found } = reference<{
      data: { Reaction: number[]; Days: number[]; Subject: string[] };
      result: {
        REML_random_intercept: {
          fixef: Record<'(Intercept)' | 'Days', number>;
          fixef_se: Record<'(Intercept)' | 'Days', number>;
          varcorr: { sdcor: [number, number] };
          deviance_or_remlcrit: number;
        };
      };
    }>('lme4_sleepstudy');
    const expected = found.REML_random_intercept;
    const x = sleep.Days.map((day) => [1, day]);
    const mixed = fitTable(x, sleep.Reaction, sleep.Subject);
    // File: fixed terms 1e-6, sd 1e-4, log-likelihood absolute 1e-5 (the criterion is twice that).
    expect(relative(Math.sqrt(mixed.cellVariance), expected.varcorr.sdcor[0])).toBeLessThan(1e-4);
    expect(relative(Math.sqrt(mixed.rowVariance), expected.varcorr.sdcor[1])).toBeLessThan(1e-4);
    expect(Math.abs(wholeCriterion(x, mixed.criterion) - expected.deviance_or_remlcrit)).toBeLessThan(2e-5);
    const { contrasts } = kenwardRoger(mixed, [
      [1, 0],
      [0, 1],
    ]);
    for (const [i, term] of (['(Intercept)', 'Days'] as const).entries()) {
      expect(relative(contrasts[i]?.estimate, expected.fixef[term])).toBeLessThan(1e-6);
      expect(relative(contrasts[i]?.se, expected.fixef_se[term])).toBeLessThan(1e-4);
    }
    // Within balanced groups a slope has the rows less the groups' levels and itself: 180 − 18 − 1.
    expect(relative(contrasts[1]?.df, 161)).toBeLessThan(1e-6);
  });
});

describe('five riders on mirrored Williams orders', () => {
  const { runs, result } = teamTrend<{
      mixed: { vc: { grp: string[]; sd: number[] } };
      KR_vs_A: Record<'estimate' | 'se' | 'df' | 'p', number[]>;
      cell_means_two_way: { lm: { df_residual: number } };
    }>();

  it('estimates, standard errors, degrees of freedom and P values of Kenward and Roger, the rider-by-arm part being 0', () => {
    const model = fitRiders(runs, 'A', 'linear');
    const { grp, sd } = result.mixed.vc;
    expect(sd[grp.indexOf('rs')]).toBe(0);
    expect(model?.riderSd).toBe(0);
    // File: REML sd relative 1e-4, KR se and df 1e-3.
    expect(relative(Math.sqrt(model?.variance ?? 0), sd[grp.indexOf('Residual')] as number)).toBeLessThan(1e-4);
    expect(model?.differences).toHaveLength(3);
    for (const [i, { estimate, se, df }] of (model?.differences ?? []).entries()) {
      expect(relative(estimate, result.KR_vs_A.estimate[i] as number)).toBeLessThan(1e-6);
      expect(relative(se, result.KR_vs_A.se[i] as number)).toBeLessThan(1e-3);
      expect(relative(df, result.KR_vs_A.df[i] as number)).toBeLessThan(1e-3);
      // A P value moves by about t² / 2 times as much as se does: t is 3.2 at most.
      expect(relative(differenceTest(estimate, se, df), result.KR_vs_A.p[i] as number)).toBeLessThan(5e-3);
    }
  });

  it('where riders do differ, balanced runs give the two-way analysis of rider means', () => {
    const SPREAD = [0.02, -0.015, 0.01, -0.02, 0.005];
    const riders = [...new Set(runs.map(({ rider }) => rider))];
    const arms = ['A', 'B', 'C', 'D'];
    const suited = runs.map((run): TimedRun => {
      const at = (riders.indexOf(run.rider) + 2 * arms.indexOf(run.arm)) % SPREAD.length;
      return { ...run, time: run.time * Math.exp(SPREAD[at] as number) };
    });
    const model = fitRiders(suited, 'A', 'linear');
    expect(model?.riderSd).toBeGreaterThan(0.005);
    // Mirrored orders: the trend is orthogonal to the arms, so that the means need no adjustment.
    const means = riders.flatMap((rider) =>
      arms.map((arm): TimedRun => {
        const own = suited.filter((run) => run.rider === rider && run.arm === arm);
        const log = own.reduce((sum, run) => sum + Math.log(run.time), 0) / own.length;
        return { arm, rider, session: 'one', position: 1, voided: false, time: Math.exp(log) };
      }),
    );
    const between = fitRuns(means, 'A', 'none');
    for (const [i, { estimate, se, df }] of (model?.differences ?? []).entries()) {
      const expected = between?.differences[i];
      expect(estimate).toBeCloseTo(expected?.estimate ?? Number.NaN, 9);
      // The search settles the ratio of variances to 1e-8.
      const expectedSe = Math.sqrt((between?.variance ?? 0) * (expected?.unscaledVariance ?? 0));
      expect(relative(se, expectedSe)).toBeLessThan(1e-6);
      expect(relative(df, result.cell_means_two_way.lm.df_residual)).toBeLessThan(1e-5);
    }
  });

  it('one run of each rider on each arm: rider means are the runs, scatter and what suits riders are one', () => {
    const once = runs.filter((run) => run.position <= 4);
    const model = fitRiders(once, 'A', 'none');
    const plain = fitRuns(once, 'A', 'none');
    for (const [i, { estimate, se, df }] of (model?.differences ?? []).entries()) {
      const expected = plain?.differences[i];
      expect(estimate).toBeCloseTo(expected?.estimate ?? Number.NaN, 12);
      expect(df).toBeCloseTo(12, 9);
      expect(relative(se, Math.sqrt((plain?.variance ?? 0) * (expected?.unscaledVariance ?? 0)))).toBeLessThan(1e-9);
    }
  });

  it('a lost time moves the answer a little and does not change the question', () => {
    const whole = fitRiders(runs, 'A', 'linear');
    for (const lost of [0, 7, 19, 26]) {
      const model = fitRiders(
        runs.filter((_, i) => i !== lost),
        'A',
        'linear',
      );
      for (const [i, { df, se }] of (model?.differences ?? []).entries()) {
        // Residual degrees of freedom of the runs would be 30.
        expect(Math.abs(df - (whole?.differences[i]?.df ?? 0))).toBeLessThan(1.5);
        expect(relative(se, whole?.differences[i]?.se ?? 0)).toBeLessThan(0.25);
      }
    }
  });

  it('nothing is known of how riders differ from one of them', () => {
    expect(fitRiders(runs.filter(({ rider }) => rider === 'R1'), 'A', 'linear')).toBeNull();
  });
});
