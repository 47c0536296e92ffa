import { describe, expect, it } from 'vitest';
import {
  chiSquareQuantile,
  digamma,
  inverseTrigamma,
  trigamma,
  tUpperQuantile,
  tUpperTail,
} from '../../libs/evidence/src/numerics/distributions.js';
import { logNormalCdf, normalUpperTail } from '../../libs/evidence/src/numerics/normal.js';
import { meanOverScatter } from '../../libs/evidence/src/numerics/scatter.js';
import { reference } from './evidence-reference.js';

const { result } = reference<{ result: { fn: string; args: number[]; value: number; mp?: number }[] }>('distributions');
const squeeze = reference<{ result: { trigammaInverse: { x: number[]; y: number[] } } }>('limma_squeezeVar');

/** File: relative 1e-10, quantiles 1e-9. */
const TAIL = 1e-10;
const QUANTILE = 1e-9;

/** P(T′ ≤ t) of the non-central t, by the same mean over the scatter as the power of a comparison. */
const nonCentral = (t: number, df: number, ncp: number): number => meanOverScatter(df, (s) => normalUpperTail(ncp - t * s));

const functions: Record<string, { got: (...args: number[]) => number; tolerance: number; absolute?: boolean }> = {
  pnorm: { got: (z) => normalUpperTail(-(z as number)), tolerance: TAIL },
  pnorm_log: { got: (z) => logNormalCdf(z as number).value, tolerance: TAIL },
  pt: { got: (t, df) => tUpperTail(-(t as number), df as number), tolerance: TAIL },
  qt: { got: (p, df) => -tUpperQuantile(p as number, df as number), tolerance: QUANTILE },
  digamma: { got: (x) => digamma(x as number), tolerance: TAIL },
  trigamma: { got: (x) => trigamma(x as number), tolerance: TAIL },
  // File: absolute 1e-9.
  pnct: { got: (t, df, ncp) => nonCentral(t as number, df as number, ncp as number), tolerance: 1e-9, absolute: true },
};

describe.each(Object.entries(functions))('%s', (name, { got, tolerance, absolute }) => {
  it.each(result.filter((row) => row.fn === name).map((row) => [row.args.join(', '), row] as const))('(%s)', (_, row) => {
    const expected = row.mp ?? row.value;
    const error = Math.abs(got(...row.args) - expected);
    expect(absolute === true || expected === 0 ? error : error / Math.abs(expected)).toBeLessThan(tolerance);
  });
});

it('χ² quantiles up to some hundred degrees of freedom', () => {
  const MOST_DF = 500;
  for (const row of result.filter(({ fn, args }) => fn === 'qchisq' && (args[1] as number) <= MOST_DF)) {
    const [p, df] = row.args as [number, number];
    expect(Math.abs(chiSquareQuantile(p, df) / row.value - 1), row.args.join()).toBeLessThan(QUANTILE);
  }
});

it('inverse of the trigamma function', () => {
  const { x, y } = squeeze.result.trigammaInverse;
  for (const [i, expected] of y.entries()) {
    // File: relative 1e-8.
    expect(Math.abs(inverseTrigamma(x[i] as number) / expected - 1)).toBeLessThan(1e-8);
  }
});
