import { radian } from '@loamledger/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SpringInputError } from '../numerics/input-error.js';
import { forkLeverage, leverageFromTable, type LeverageRow } from './leverage.js';

const STROKE = 0.065;

/** Tables with rising shock travel to the end of the stroke. */
const table = fc
  .array(fc.tuple(fc.double({ min: 0.1, max: 1, noNaN: true }), fc.double({ min: 1, max: 4, noNaN: true })), {
    minLength: 2,
    maxLength: 12,
  })
  .map((steps): LeverageRow[] => {
    const gaps = steps.slice(1).map(([gap]) => gap);
    const total = gaps.reduce((sum, gap) => sum + gap, 0);
    let travel = 0;
    return steps.map(([, leverageRatio], i) => {
      if (i > 0) travel += ((gaps[i - 1] ?? 0) / total) * STROKE;
      return { shockTravel: i === steps.length - 1 ? STROKE : travel, leverageRatio };
    });
  });

describe('forkLeverage', () => {
  it('is the sine of the head angle, constant', () => {
    const curve = forkLeverage(radian((64 * Math.PI) / 180));
    expect(curve.ratio(0)).toBeCloseTo(0.898794046299167, 15);
    expect(curve.ratio(0.1)).toBe(curve.ratio(0));
    expect(curve.slope(0.1)).toBe(0);
    expect(curve.wheelTravel(0.17)).toBeCloseTo(0.17 * 0.898794046299167, 15);
  });

  it.each([0, -1, Math.PI, NaN, Infinity])('refuses a head angle of %s rad', (angle) => {
    expect(() => forkLeverage(radian(angle))).toThrow(SpringInputError);
  });
});

describe('leverageFromTable', () => {
  it('passes through every row and stays between neighbouring rows', () => {
    fc.assert(
      fc.property(table, (rows) => {
        const curve = leverageFromTable(rows, STROKE);
        rows.forEach((row, i) => {
          expect(curve.ratio(row.shockTravel)).toBeCloseTo(row.leverageRatio, 10);
          const next = rows[i + 1];
          if (next === undefined) return;
          const [low, high] = [row.leverageRatio, next.leverageRatio].sort((a, b) => a - b) as [
            number,
            number,
          ];
          for (const part of [0.1, 0.3, 0.5, 0.7, 0.9]) {
            const here = curve.ratio(row.shockTravel + part * (next.shockTravel - row.shockTravel));
            expect(here).toBeGreaterThanOrEqual(low - 1e-9);
            expect(here).toBeLessThanOrEqual(high + 1e-9);
          }
        });
      }),
    );
  });

  it('has a wheel travel whose derivative is the ratio, and a slope which is the derivative of the ratio', () => {
    fc.assert(
      fc.property(table, fc.double({ min: 0.02, max: 0.98, noNaN: true }), (rows, part) => {
        const curve = leverageFromTable(rows, STROKE);
        const s = part * STROKE;
        const d = 1e-7;
        const isNearRow = rows.some((row) => Math.abs(row.shockTravel - s) < 2 * d);
        if (isNearRow) return;
        const derivative = (f: (x: number) => number) => (f(s + d) - f(s - d)) / (2 * d);
        // Central differences over 1e-7 m: rounding 1e-16·0.2/1e-7 and truncation both below 1e-5 of the ratio.
        expect(derivative(curve.wheelTravel)).toBeCloseTo(curve.ratio(s), 5);
        const scale = 1 + Math.abs(curve.slope(s));
        expect(derivative(curve.ratio) / scale).toBeCloseTo(curve.slope(s) / scale, 3);
      }),
    );
  });

  it('reproduces a straight leverage curve exactly, wheel travel included', () => {
    const rows = [0, 0.02, 0.05, STROKE].map((s) => ({ shockTravel: s, leverageRatio: 3 - 10 * s }));
    const curve = leverageFromTable(rows, STROKE);
    expect(curve.ratio(0.033)).toBeCloseTo(2.67, 12);
    expect(curve.wheelTravel(STROKE)).toBeCloseTo(3 * STROKE - 5 * STROKE ** 2, 12);
  });

  it('is of second order or better in the spacing of the rows', () => {
    const smooth = (s: number) => 3.05 - 1.15 * (s / STROKE) + 0.3 * (s / STROKE) ** 2;
    const errorWith = (count: number) => {
      const rows = Array.from({ length: count + 1 }, (_, i) => {
        const s = (STROKE * i) / count;
        return { shockTravel: s, leverageRatio: smooth(s) };
      });
      const curve = leverageFromTable(rows, STROKE);
      return Math.max(
        ...[0.11, 0.33, 0.52, 0.77].map((u) => Math.abs(curve.ratio(u * STROKE) - smooth(u * STROKE))),
      );
    };
    expect(errorWith(20)).toBeLessThan(errorWith(10) / 3.5);
    expect(errorWith(10)).toBeLessThan(1e-4);
  });

  it.each<[string, LeverageRow[], string]>([
    [
      'turns back',
      [
        { shockTravel: 0, leverageRatio: 3 },
        { shockTravel: 0.04, leverageRatio: 2.8 },
        { shockTravel: 0.03, leverageRatio: 2.5 },
      ],
      'rows[2].shockTravel',
    ],
    [
      'repeats a travel',
      [
        { shockTravel: 0, leverageRatio: 3 },
        { shockTravel: 0, leverageRatio: 2.8 },
      ],
      'rows[1].shockTravel',
    ],
    [
      'does not begin at 0',
      [
        { shockTravel: 0.01, leverageRatio: 3 },
        { shockTravel: STROKE, leverageRatio: 2.8 },
      ],
      'rows[0].shockTravel',
    ],
    [
      'ends before the stroke',
      [
        { shockTravel: 0, leverageRatio: 3 },
        { shockTravel: 0.06, leverageRatio: 2.8 },
      ],
      'rows[1].shockTravel',
    ],
    [
      'has a ratio of 0',
      [
        { shockTravel: 0, leverageRatio: 0 },
        { shockTravel: STROKE, leverageRatio: 2.8 },
      ],
      'rows[0].leverageRatio',
    ],
    [
      'has a ratio that is not a number',
      [
        { shockTravel: 0, leverageRatio: NaN },
        { shockTravel: STROKE, leverageRatio: 2.8 },
      ],
      'rows[0].leverageRatio',
    ],
    ['has one row', [{ shockTravel: 0, leverageRatio: 3 }], 'rows.length'],
  ])('refuses a table that %s, naming the row', (_, rows, argument) => {
    expect(() => leverageFromTable(rows, STROKE)).toThrow(
      expect.objectContaining({ name: 'SpringInputError', argument }) as Error,
    );
  });
});
