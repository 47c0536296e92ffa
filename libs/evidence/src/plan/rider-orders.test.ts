import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shuffled, uniformNumbers } from '../numerics/random.js';
import { balancedInflation } from './balanced-inflation.js';
import { scoreRuns } from './order-score.js';
import { riderOrders } from './rider-orders.js';
import { williamsRows } from './williams.js';

const sizes = fc.record({
  arms: fc.integer({ min: 2, max: 5 }),
  riders: fc.integer({ min: 2, max: 6 }),
  runsAnArm: fc.integer({ min: 1, max: 3 }),
  trend: fc.constantFrom('linear', 'quadratic'),
  seed: fc.nat(),
});

const runsOf = (orders: readonly (readonly number[])[]) =>
  orders.flatMap((order, block) => order.map((arm, i) => ({ arm, block, position: i + 1 })));
const fitted = (orders: readonly (readonly number[])[], trend: 'linear' | 'quadratic'): number =>
  scoreRuns(runsOf(orders), trend).maxInflation ?? Number.POSITIVE_INFINITY;

describe('orders of several riders', () => {
  it('hold every arm equally often for each, and are the same for the same numbers', () => {
    fc.assert(
      fc.property(sizes, (request) => {
        const orders = riderOrders(request, uniformNumbers(request.seed));
        expect(riderOrders(request, uniformNumbers(request.seed))).toEqual(orders);
        expect(orders).toHaveLength(request.riders);
        for (const order of orders) {
          for (let arm = 0; arm < request.arms; arm += 1) {
            expect(order.filter((entry) => entry === arm)).toHaveLength(request.runsAnArm);
          }
        }
      }),
      { numRuns: 30 },
    );
  });

  it('are never less precise than what one draw gives', () => {
    fc.assert(
      fc.property(sizes, (request) => {
        const many = fitted(riderOrders(request, uniformNumbers(request.seed)), request.trend);
        const one = fitted(riderOrders(request, uniformNumbers(request.seed), 1), request.trend);
        // Rounding of the fit.
        expect(many <= one + 1e-9).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('are as precise as the best of many plain draws of Williams rows', () => {
    const plain = uniformNumbers(5);
    for (const [arms, riders] of [
      [3, 2],
      [3, 4],
      [4, 2],
      [4, 3],
      [5, 3],
    ] as const) {
      const request = { arms, riders, runsAnArm: 1, trend: 'linear', seed: 3 } as const;
      const found = fitted(riderOrders(request, uniformNumbers(3)), 'linear');
      const drawn = Array.from({ length: 40 }, () =>
        fitted(shuffled(williamsRows(arms), plain).slice(0, riders), 'linear'),
      );
      expect(found).toBeLessThanOrEqual(Math.min(...drawn) + 1e-9);
    }
  });
});

describe('the inflation of balanced orders', () => {
  it('is that of a fit of all runs', () => {
    fc.assert(
      fc.property(sizes, ({ arms, riders, runsAnArm, seed }) => {
        const uniform = uniformNumbers(seed);
        const runs = Array.from({ length: arms * runsAnArm }, (_, i) => i % arms);
        const orders = Array.from({ length: riders }, () => shuffled(runs, uniform));
        const { linear, quadratic } = balancedInflation(orders, arms);
        // Relative: rounding of a fit whose condition grows with the inflation.
        for (const [closed, fit] of [
          [linear, fitted(orders, 'linear')],
          [quadratic, fitted(orders, 'quadratic')],
        ] as const) {
          if (Number.isFinite(closed) && Number.isFinite(fit)) expect(closed / fit).toBeCloseTo(1, 6);
          else expect(closed).toBe(fit);
        }
      }),
    );
  });
});
