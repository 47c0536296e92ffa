import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alongAxis, axisOver, strokeTicks } from './chart-scale.js';

describe('an axis', () => {
  it('holds all data between round figures', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e4, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        (least, span) => {
          const axis = axisOver(least, least + span, 5);
          // An end may miss the data by the part of a step that counts as none.
          const rounding = 2e-9 * (axis.to - axis.from);
          expect(axis.from).toBeLessThanOrEqual(least + rounding);
          expect(axis.to).toBeGreaterThanOrEqual(least + span - rounding);
          expect(axis.ticks.length).toBeLessThanOrEqual(8);
        },
      ),
    );
  });

  it('over its own ends is itself', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-2, max: 1e5, noNaN: true }), (most) => {
        const axis = axisOver(0, most, 5);
        expect(axisOver(axis.from, axis.to, 5)).toEqual(axis);
      }),
    );
  });

  it('stands where there are no data', () => {
    expect(axisOver(Infinity, -Infinity, 5).ticks).toEqual([0, 1]);
    expect(alongAxis(axisOver(0, 10, 5), 5, 200)).toBe(100);
  });

  it('ends a stroke with its own figure', () => {
    expect(strokeTicks(170, 5)).toEqual([0, 50, 100, 170]);
    expect(strokeTicks(62.5, 5)).toEqual([0, 20, 40, 62.5]);
  });
});
