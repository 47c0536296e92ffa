import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestOrder } from './order-search.js';
import { sessionSums, spreadOf } from './place-balance.js';
import { scoreOrder } from './order-score.js';
import { williamsRows } from './williams.js';

const places = (n: number): number[] => Array.from({ length: n }, (_, i) => i + 1);

describe('the score of an order', () => {
  it('has no residual and no verdict with one run an arm', () => {
    const score = scoreOrder([0, 1], 'linear');
    expect(score.maxInflation).toBeNull();
    expect(score.residualDf).toBeLessThanOrEqual(0);
  });

  it('never beats an order without trend, and is the same when the session is turned round', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 6, maxLength: 14 }), (drawn) => {
        const arms = [0, 1, 2, ...drawn];
        const score = scoreOrder(arms, 'linear');
        if (score.maxInflation === null) return;
        for (const pair of score.pairs) expect(pair.inflation).toBeGreaterThan(1 - 1e-9);
        const back = scoreOrder([...arms].reverse(), 'linear');
        // Rounding of a fit with condition up to about 100.
        expect(back.maxInflation).toBeCloseTo(score.maxInflation, 9);
      }),
    );
  });

  it('a void run makes the balance worse or leaves it', () => {
    const whole = scoreOrder([0, 1, 1, 0], 'linear');
    const holed = scoreOrder([0, 1, 0], 'linear', [1, 2, 4]);
    expect(whole.maxInflation).toBeCloseTo(1, 12);
    expect(holed.maxInflation).toBeGreaterThan(1);
  });
});

describe('the best order', () => {
  it('is free of a linear trend wherever runs an arm are even', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 4 }),
        fc.integer({ min: 1, max: 3 }),
        fc.nat(),
        (arms, half, seed) => {
          const order = bestOrder(new Array<number>(arms).fill(2 * half), places(2 * half * arms), seed);
          const imbalance = spreadOf(sessionSums(arms, [], places(order.length))(order));
          expect(imbalance.linear).toBeCloseTo(0, 12);
          expect(scoreOrder(order, 'linear').maxInflation).toBeCloseTo(1, 9);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('with the same seed is the same, and holds every run that was asked for', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 2, maxLength: 4 }),
        fc.nat(),
        (counts, seed) => {
          const total = counts.reduce((sum, count) => sum + count, 0);
          const order = bestOrder(counts, places(total), seed);
          expect(order).toEqual(bestOrder(counts, places(total), seed));
          for (const [arm, count] of counts.entries())
            expect(order.filter((a) => a === arm)).toHaveLength(count);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('for two arms of four runs is free of a quadratic trend as well', () => {
    const order = bestOrder([4, 4], places(8), 1);
    expect(scoreOrder(order, 'quadratic').maxInflation).toBeCloseTo(1, 9);
  });
});

describe('Williams orders', () => {
  it.each([2, 3, 4, 5, 6, 7, 8])(
    'of %i arms: every arm once a row, every pair adjacent equally often',
    (k) => {
      const rows = williamsRows(k);
      const follows = new Map<string, number>();
      const at = new Map<string, number>();
      for (const row of rows) {
        expect([...row].sort((a, b) => a - b)).toEqual(Array.from({ length: k }, (_, i) => i));
        for (const [i, arm] of row.entries()) {
          at.set(`${arm} ${i}`, (at.get(`${arm} ${i}`) ?? 0) + 1);
          if (i > 0) follows.set(`${row[i - 1]} ${arm}`, (follows.get(`${row[i - 1]} ${arm}`) ?? 0) + 1);
        }
      }
      expect(rows).toHaveLength(k % 2 === 0 ? k : 2 * k);
      expect(new Set(follows.values())).toEqual(new Set([k % 2 === 0 ? 1 : 2]));
      expect(follows.size).toBe(k * (k - 1));
      expect(new Set(at.values())).toEqual(new Set([rows.length / k]));
    },
  );
});
