import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisTicks, linesWithin, placeReadings, scaleFor, toPixels, type DemandReading } from './scale.js';

const reading = (heightM: number, id = String(heightM)): DemandReading => ({
  id,
  heightM,
  kind: 'exact',
  voided: false,
  label: id,
  standing: null,
});

const row = (readings: DemandReading[]) => ({ key: 'a', label: 'a', readings, bottomsAt: [] });

describe('demand strip', () => {
  it('gives equal room to equal ratios of height', () => {
    const scale = { fromM: 0.1, toM: 10, widthPx: 400 };
    expect(toPixels(scale, 1)).toBeCloseTo(200, 9);
    expect(toPixels(scale, 0.1)).toBe(0);
  });

  it('holds every reading and the bottoming height', () => {
    const scale = scaleFor(
      [{ ...row([reading(0.2), reading(1.1)]), bottomsAt: [{ heightM: 2.4, label: 'bottoms' }] }],
      400,
    );
    expect(scale.fromM).toBeLessThan(0.2);
    expect(scale.toM).toBeGreaterThan(2.4);
  });

  it('has an axis before the first reading', () => {
    expect(axisTicks(scaleFor([row([])], 400))).toEqual([0.1, 0.2, 0.5, 1, 2]);
  });

  it('marks 1, 2 and 5 of a decade, without the noise of binary fractions', () => {
    expect(axisTicks({ fromM: 0.05, toM: 3, widthPx: 800 })).toEqual([0.05, 0.1, 0.2, 0.5, 1, 2]);
  });

  it('marks more heights where the readings lie close together', () => {
    expect(axisTicks({ fromM: 0.35, toM: 1.3, widthPx: 800 })).toEqual([0.4, 0.5, 0.6, 0.8, 1]);
  });

  it('breaks words into lines that fit, and only between words', () => {
    expect(linesWithin('Ash, trail bottoms at 0.66 m', 40)).toEqual(['Ash, trail bottoms at 0.66 m']);
    expect(linesWithin('Ash, trail bottoms at 0.66 m', 20)).toEqual(['Ash, trail bottoms', 'at 0.66 m']);
    expect(linesWithin('Copperfinch Chute', 5)).toEqual(['Copperfinch', 'Chute']);
  });

  it('hides no reading behind another, however many there are', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.05, max: 4, noNaN: true }), { minLength: 1, maxLength: 80 }),
        (heights) => {
          const readings = heights.map((height, index) => reading(height, String(index)));
          const placed = placeReadings(readings, scaleFor([row(readings)], 360));
          expect(placed).toHaveLength(readings.length);
          for (const lane of new Set(placed.map((dot) => dot.lane))) {
            const inLane = placed.filter((dot) => dot.lane === lane).map((dot) => dot.xPx);
            inLane.slice(1).forEach((x, i) => expect(x - (inLane[i] ?? 0)).toBeGreaterThanOrEqual(10.99));
          }
        },
      ),
    );
  });
});
