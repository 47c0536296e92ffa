import { describe, expect, it } from 'vitest';
import { contrast, leastSquares } from '../../libs/evidence/src/linear/least-squares.js';
import { reference } from './evidence-reference.js';

interface LmFit {
  coefficients: Record<'estimate' | 'se', number[]>;
  sigma: number;
  df_residual: number;
  rss: number;
}

const relative = (got: number, expected: number): number => Math.abs(got / expected - 1);

function expectLm(x: number[][], y: number[], expected: LmFit, tolerance: number): void {
  const fit = leastSquares(x, y);
  const sigma = Math.sqrt(fit.residualSumOfSquares / fit.residualDf);
  expect(fit.residualDf).toBe(expected.df_residual);
  expect(relative(sigma, expected.sigma)).toBeLessThan(tolerance);
  for (const [j, estimate] of expected.coefficients.estimate.entries()) {
    expect(relative(fit.coefficients[j] as number, estimate)).toBeLessThan(tolerance);
    const se = sigma * Math.sqrt(fit.inverse[j]?.[j] as number);
    expect(relative(se, expected.coefficients.se[j] as number)).toBeLessThan(tolerance);
  }
}

describe('least squares by reflections', () => {
  it('PlantGrowth, a one-way model', () => {
    const { data, result } = reference<{ data: { weight: number[]; group: string[] }; result: { lm: LmFit } }>(
      'lm_plantgrowth',
    );
    const x = data.group.map((group) => [1, Number(group === 'trt1'), Number(group === 'trt2')]);
    // File: relative 1e-10. The residual of 30 sums leaves a few more roundings in trt1, a difference of means.
    expectLm(x, data.weight, result.lm, 1e-10);
  });

  it('Longley, whose columns are nearly dependent', () => {
    const { data, result } = reference<{
      data: { rows: number[][] };
      result: { exact: { coef: number[]; se: number[]; residual_sd: number; rss: number; df: number } };
    }>('nist_longley');
    const y = data.rows.map((row) => row[0] as number);
    const x = data.rows.map((row) => [1, ...row.slice(1)]);
    const { coef, se, residual_sd, rss, df } = result.exact;
    // File: 1e-7 on centred columns. Uncentred the condition number is 4e9 squared away by nothing: reflections keep it.
    expectLm(
      x,
      y,
      { coefficients: { estimate: coef, se }, sigma: residual_sd, rss, df_residual: df },
      1e-7,
    );
  });

  it('Wampler, exact polynomials of degree 5', () => {
    const { data, result } = reference<{
      data: { x: number[] };
      result: Record<'Wampler1' | 'Wampler2', { y: number[]; coef: number[] }>;
    }>('nist_wampler');
    const x = data.x.map((value) => [0, 1, 2, 3, 4, 5].map((power) => value ** power));
    for (const { y, coef } of [result.Wampler1, result.Wampler2]) {
      const fit = leastSquares(x, y);
      // Condition 5e6 with scaled columns: nine digits of the largest terms are left for the smallest coefficient.
      for (const [j, expected] of coef.entries()) {
        expect(Math.abs((fit.coefficients[j] as number) - expected)).toBeLessThan(1e-7 * Math.max(1, expected));
      }
    }
  });

  it('names the columns that depend on earlier ones', () => {
    const x = [1, 2, 3, 4, 5, 6].map((i) => [1, i, 2 * i - 1, i * i]);
    const fit = leastSquares(
      x,
      [1, 4, 9, 16, 25, 36],
    );
    expect(fit.aliased).toEqual([2]);
    expect(fit.rank).toBe(3);
    expect(contrast(fit, [0, 0, 0, 1]).estimate).toBeCloseTo(1, 12);
  });
});
