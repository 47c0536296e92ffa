import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toDigits } from './digits.js';

describe('rounding to significant digits', () => {
  it('is what the decimal text says, or the decimal beside it where two are equally near', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const rounded = toDigits(value, 8);
        const text = Number(value.toPrecision(8));
        if (rounded === text) return;
        // Half a unit of the eighth digit, from either side: 5e-9 to 5e-8 of the value.
        expect(Math.abs(rounded - value) / Math.abs(text - value)).toBeCloseTo(1, 6);
      }),
      { numRuns: 2000 },
    );
  });

  it('has no more digits than asked for', () => {
    fc.assert(
      fc.property(fc.double({ min: -10, max: 10, noNaN: true }), (value) => {
        const rounded = toDigits(value, 8);
        expect(Number(rounded.toPrecision(8))).toBe(rounded);
      }),
      { numRuns: 2000 },
    );
  });

  it('leaves what is no ordinary number', () => {
    expect(toDigits(0, 8)).toBe(0);
    expect(toDigits(Number.POSITIVE_INFINITY, 8)).toBe(Number.POSITIVE_INFINITY);
    expect(toDigits(Number.NaN, 8)).toBeNaN();
    expect(toDigits(1.23456789123e-300, 8)).toBe(1.2345679e-300);
  });
});
