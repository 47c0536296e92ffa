import { describe, expect, it } from 'vitest';
import { bikeValues } from './bike-form.js';
import { genericLeverage, GENERIC_FRAMES, withFrame } from './generic-frames.js';
import { readLeverage } from './leverage.js';

describe('a generic leverage table', () => {
  it.each([
    [65, 165],
    [57.5, 130],
    [75, 200],
  ])('of a %d mm shock moves the wheel %d mm, falling over the whole stroke', (stroke, travel) => {
    const table = genericLeverage(stroke, travel);
    expect(table[0]?.shockTravelMm).toBe(0);
    expect(table.at(-1)?.shockTravelMm).toBe(stroke);
    const ratios = table.map(({ leverageRatio }) => leverageRatio);
    expect(ratios).toEqual(ratios.toSorted((a, b) => b - a));
    // Straight lines between the points, as the engine takes the table: a per cent from the curve at most.
    const reached = table.slice(1).reduce((sum, row, i) => {
      const before = table[i] ?? row;
      return (
        sum + ((row.leverageRatio + before.leverageRatio) / 2) * (row.shockTravelMm - before.shockTravelMm)
      );
    }, 0);
    expect(Math.abs(reached / travel - 1)).toBeLessThan(0.01);
  });
});

describe('a bike started from a generic frame', () => {
  it.each(GENERIC_FRAMES)('has every figure, all marked assumed: $label', ({ category }) => {
    const values = withFrame(bikeValues(undefined), category, 65);
    expect(values.category).toBe(category);
    expect(values.massKg).not.toBe('');
    expect(new Set(Object.values(values.sources))).toEqual(new Set(['assumed']));
    expect(readLeverage(values.leverageTable)).toMatchObject({ table: { length: 5 } });
  });

  it('without a shock has no rear travel and no table', () => {
    expect(withFrame(bikeValues(undefined), 'trail', null)).toMatchObject({
      rearWheelTravelMm: '0',
      leverageTable: '',
    });
  });
});
