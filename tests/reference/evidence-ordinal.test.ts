import { describe, expect, it } from 'vitest';
import { proportionalOdds, type OrdinalRow } from '../../libs/evidence/src/compare/proportional-odds.js';
import { reference } from './evidence-reference.js';

interface Housing {
  readonly data: Readonly<Record<'Sat' | 'Infl' | 'Type' | 'Cont', string[]>> & { readonly Freq: number[] };
  readonly result: {
    readonly clm: { readonly term: string[]; readonly estimate: number[]; readonly se: number[]; readonly logLik: number };
  };
}

/** File: the Newton fit to relative 1e-7. */
const RELATIVE = 1e-7;
const LEVELS = ['Low', 'Medium', 'High'];
const { data, result } = reference<Housing>('polr_housing');

const rows: OrdinalRow[] = data.Freq.map((count, i) => ({
  level: LEVELS.indexOf(data.Sat[i] as string),
  count,
  x: [
    ...['Medium', 'High'].map((level) => Number(data.Infl[i] === level)),
    ...['Apartment', 'Atrium', 'Terrace'].map((type) => Number(data.Type[i] === type)),
    Number(data.Cont[i] === 'High'),
  ],
}));

describe('proportional odds', () => {
  it('are those of an independent fit of 1681 answers on three levels', () => {
    const model = proportionalOdds(rows);
    if (model.status !== 'fitted') throw new Error(model.status);
    const near = (got: number, expected: number) =>
      expect(Math.abs(got / expected - 1), `${got} for ${expected}`).toBeLessThan(RELATIVE);
    const { estimate, se, logLik } = result.clm;
    for (const [i, got] of [...model.thresholds, ...model.effects].entries()) near(got, estimate[i] as number);
    for (const [i, got] of [...model.thresholdSes, ...model.effectSes].entries()) near(got, se[i] as number);
    near(model.logLikelihood, logLik);
  });
});
