import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logNormalCdf } from '../numerics/normal.js';
import type { BoundRows } from './bound-factor.js';
import { BoundProduct } from './bound-product.js';

interface Bound {
  limit: number;
  variance: number;
  side: number;
}

const bound: fc.Arbitrary<Bound> = fc.record({
  limit: fc.double({ min: -1, max: 1, noNaN: true }),
  variance: fc.double({ min: 1e-4, max: 0.3, noNaN: true }),
  side: fc.constantFrom(1, -1),
});
const bounds = fc.array(bound, { minLength: 1, maxLength: 10 });
const level = fc.double({ min: -3, max: 3, noNaN: true });

const rowsOf = (bounds: readonly Bound[]): BoundRows => ({
  limit: Float64Array.from(bounds, ({ limit }) => limit),
  variance: Float64Array.from(bounds, ({ variance }) => variance),
  side: Int8Array.from(bounds, ({ side }) => side),
});

const worked = (rows: readonly Bound[], at: number): number =>
  rows.reduce(
    (sum, { limit, variance, side }) => sum + logNormalCdf((side * (at - limit)) / Math.sqrt(variance)).value,
    0,
  );

describe('a product of bounds', () => {
  it('is the sum over its bounds at any level, in whatever order levels are asked', () => {
    fc.assert(
      fc.property(bounds, fc.array(level, { minLength: 1, maxLength: 20 }), (rows, levels) => {
        const product = new BoundProduct(rowsOf(rows));
        for (const at of levels) {
          const exact = worked(rows, at);
          // 5e-9 a bound by interpolation; sums of up to 1e6 keep ten digits beside the terms that cancel in it.
          expect(Math.abs(product.logAt(at) - exact)).toBeLessThan(1e-7 + 1e-10 * Math.abs(exact));
        }
      }),
    );
  });

  it('works bounds out one by one where a table would be endless', () => {
    const sharp: Bound[] = [{ limit: 0, variance: 1e-14, side: 1 }];
    const product = new BoundProduct(rowsOf(sharp));
    expect(product.logAt(1e-8)).toBeCloseTo(worked(sharp, 1e-8), 8);
    expect(product.logAt(2)).toBe(0);
    expect(product.logAt(-2)).toBe(worked(sharp, -2));
  });
});
