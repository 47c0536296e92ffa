import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alongAxis, axisBetween } from './axis.js';
import { intervalAxis } from './interval-axis.js';

const figure = fc.double({ min: -1e4, max: 1e4, noNaN: true });

describe('an axis', () => {
  it('holds everything between its ends, with a few ticks at even steps', () => {
    fc.assert(
      fc.property(figure, fc.double({ min: 1e-3, max: 1e4, noNaN: true }), (least, span) => {
        const { from, to, ticks } = axisBetween(least, least + span, 5);
        // A tick has twelve digits.
        const rounding = 1e-9 * (Math.abs(least) + span);
        expect(from).toBeLessThanOrEqual(least + rounding);
        expect(to).toBeGreaterThanOrEqual(least + span - rounding);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        // At most a tick below and above the ten that a step of 1 instead of 2 could make.
        expect(ticks.length).toBeLessThanOrEqual(12);
      }),
    );
  });

  it('has a length even where all data are one figure', () => {
    const axis = axisBetween(187, 187, 5);
    expect(axis.to).toBeGreaterThan(axis.from);
    expect(alongAxis(axis, axis.to, 100)).toBe(100);
  });
});

describe('the axis of intervals', () => {
  const arm = (differencePct: number | null, lowPct: number | null, highPct: number | null) => ({
    differencePct,
    lowPct,
    highPct,
  });

  it('shows the whole margin, whatever the intervals', () => {
    for (const arms of [[], [arm(null, null, null)], [arm(0.1, -0.2, 0.3)]]) {
      const { from, to } = intervalAxis(arms, 1);
      expect(from).toBeLessThanOrEqual(-1.5);
      expect(to).toBeGreaterThanOrEqual(1.5);
    }
  });

  it('shows every difference, and lets a boundless interval run out of the picture', () => {
    const { from, to } = intervalAxis([arm(-3, -400, 900)], 1);
    expect(from).toBeLessThanOrEqual(-3);
    expect(to).toBeLessThan(50);
  });
});
