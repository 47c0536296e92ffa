import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { riskAbove } from './risk.js';
import { testFork } from './test-bike.js';

const curve = testFork.riskCurve;
const [first, last] = [curve[0]?.riskPct, curve.at(-1)?.riskPct];

describe('the risk of a hit above a height', () => {
  it('is that of the curve at its points', () => {
    for (const { heightM, riskPct } of curve) expect(riskAbove(curve, heightM)).toBeCloseTo(riskPct, 12);
  });

  it('follows a power law between them exactly', () => {
    const power = [1, 4].map((heightM) => ({ heightM, riskPct: 80 / heightM ** 2 }));
    expect(riskAbove(power, 2)).toBeCloseTo(20, 12);
  });

  it('is certain without any height, and ends with the curve', () => {
    expect(riskAbove(curve, 0)).toBe(100);
    expect(riskAbove(curve, 0.001)).toBe(first);
    expect(riskAbove(curve, Infinity)).toBe(last);
    expect(riskAbove([], 1)).toBeNull();
  });

  it('falls with height and is never NaN', () => {
    const height = fc.double({ min: 0, max: 50, noNaN: true });
    fc.assert(
      fc.property(height, height, (a, b) => {
        const [low, high] = [riskAbove(curve, Math.min(a, b)), riskAbove(curve, Math.max(a, b))];
        expect(high).toBeLessThanOrEqual(low ?? Number.NaN);
      }),
    );
  });
});
