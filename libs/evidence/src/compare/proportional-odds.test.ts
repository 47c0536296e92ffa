import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniformNumbers } from '../numerics/random.js';
import { proportionalOdds, type OrdinalRow } from './proportional-odds.js';
import { ratingOdds, type RatingStratum } from './rating-odds.js';

const row = (level: number, x: number, count = 1): OrdinalRow => ({ level, x: [x], count });

describe('proportional odds', () => {
  it('of two levels are the odds ratio of the table, with the standard error of its logarithm', () => {
    fc.assert(
      fc.property(fc.tuple(...[1, 2, 3, 4].map(() => fc.integer({ min: 1, max: 40 }))), ([a, b, c, d]) => {
        const model = proportionalOdds([row(0, 0, a), row(1, 0, b), row(0, 1, c), row(1, 1, d)]);
        if (model.status !== 'fitted') throw new Error(model.status);
        const [n00, n01, n10, n11] = [a, b, c, d] as [number, number, number, number];
        expect(model.effects[0]).toBeCloseTo(Math.log((n11 * n00) / (n10 * n01)), 6);
        expect(model.effectSes[0]).toBeCloseTo(Math.sqrt(1 / n00 + 1 / n01 + 1 / n10 + 1 / n11), 6);
      }),
    );
  });

  it('do not change when levels are named anew in their order, and turn their sign when the order is turned', () => {
    const rows = [row(0, 0, 4), row(1, 0, 6), row(2, 0, 5), row(0, 1, 2), row(1, 1, 6), row(2, 1, 9)];
    const plain = proportionalOdds(rows);
    const gaps = proportionalOdds(rows.map((entry) => ({ ...entry, level: 3 * entry.level + 1 })));
    const turned = proportionalOdds(rows.map((entry) => ({ ...entry, level: 2 - entry.level })));
    if (plain.status !== 'fitted' || turned.status !== 'fitted') throw new Error('not fitted');
    expect(gaps).toEqual(plain);
    expect(turned.effects[0]).toBeCloseTo(-(plain.effects[0] as number), 8);
  });

  it('say why there are none', () => {
    expect(proportionalOdds([row(2, 0, 5), row(2, 1, 5)]).status).toBe('one level');
    expect(proportionalOdds([row(0, 0, 5), row(1, 1, 5)]).status).toBe('separated');
    expect(proportionalOdds([row(0, 1, 5), row(1, 1, 5)]).status).toBe('not identified');
  });
});

describe('the odds of ratings', () => {
  it('wait for enough ratings', () => {
    expect(ratingOdds([{ a: [5, 4, 5, 4], b: [1, 2, 2, 1] }])).toBeNull();
    expect(ratingOdds([{ a: [5, 5], b: [] }])).toBeNull();
    expect(ratingOdds([])).toBeNull();
  });

  it('hold the true odds in their interval about 95 times in 100', () => {
    const TEAMS = 600;
    const TRUE_EFFECT = 0.8;
    const CUTS = [-2, -0.7, 0.7, 2];
    const uniform = uniformNumbers(41);
    const logit = () => {
      const u = uniform();
      return Math.log(u / (1 - u));
    };
    const rate = (level: number) => {
      const felt = level + logit();
      return 1 + CUTS.filter((cut) => felt > cut).length;
    };
    let held = 0;
    let told = 0;
    for (let team = 0; team < TEAMS; team += 1) {
      const strata: RatingStratum[] = [-0.5, 0, 0.6].map((rider) => ({
        a: Array.from({ length: 8 }, () => rate(rider + TRUE_EFFECT)),
        b: Array.from({ length: 8 }, () => rate(rider)),
      }));
      const odds = ratingOdds(strata);
      if (odds === null) continue;
      told += 1;
      if (odds.low <= Math.exp(TRUE_EFFECT) && Math.exp(TRUE_EFFECT) <= odds.high) held += 1;
    }
    expect(told).toBeGreaterThan(TEAMS / 2);
    // Three standard errors of a share of some 600.
    expect(held / told).toBeGreaterThan(0.95 - 0.027);
    expect(held / told).toBeLessThan(0.95 + 0.027);
  });
});
