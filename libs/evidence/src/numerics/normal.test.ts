import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { erfcx, logNormalCdf, normalUpperTail } from './normal.js';

/** A few roundings around a rational approximation good to 2e-16, amplified by exp(z²/2) at |z| ≤ 30 (450 ulp). */
const RELATIVE = 2e-13;

describe('the scaled complementary error function', () => {
  it('falls from 1 at 0 towards 1/(x√π)', () => {
    expect(erfcx(0)).toBe(1);
    expect(erfcx(1e8) * 1e8 * Math.sqrt(Math.PI)).toBeCloseTo(1, 14);
    expect(erfcx(-30)).toBe(Number.POSITIVE_INFINITY);
  });

  it('lies between the bounds 1/(x+√(x²+2)) and 1/(x+√(x²+4/π)), times 2/√π (Abramowitz and Stegun 7.1.13, from memory)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (x) => {
        const scaled = (erfcx(x) * Math.sqrt(Math.PI)) / 2;
        expect(scaled).toBeGreaterThanOrEqual((1 / (x + Math.sqrt(x * x + 2))) * (1 - RELATIVE));
        expect(scaled).toBeLessThanOrEqual((1 / (x + Math.sqrt(x * x + 4 / Math.PI))) * (1 + RELATIVE));
      }),
    );
  });
});

describe('log Φ and its derivatives', () => {
  const z = fc.double({ min: -30, max: 30, noNaN: true });

  it('agree with the upper tail of the mirrored argument', () => {
    fc.assert(
      fc.property(z, (x) => {
        expect(logNormalCdf(x).value).toBeCloseTo(Math.log(normalUpperTail(-x)), 11);
      }),
    );
  });

  it('slope and curvature are the differences of value and slope', () => {
    // Central difference with step 1e-4: truncation 1e-9, rounding of values up to 450 about 1e-9.
    const step = 1e-4;
    fc.assert(
      fc.property(z, (x) => {
        const [below, here, above] = [logNormalCdf(x - step), logNormalCdf(x), logNormalCdf(x + step)];
        expect((above.value - below.value) / (2 * step)).toBeCloseTo(here.slope, 6);
        expect(-(above.slope - below.slope) / (2 * step)).toBeCloseTo(here.curvature, 6);
        expect(here.curvature).toBeGreaterThanOrEqual(0);
        expect(here.curvature).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('stay finite far out', () => {
    expect(logNormalCdf(-1e6).curvature).toBeCloseTo(1, 11);
    expect(logNormalCdf(-1e6).value).toBeLessThan(-4e11);
    expect(logNormalCdf(100)).toEqual({ value: 0, slope: 0, curvature: 0 });
  });
});
