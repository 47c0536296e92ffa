import { describe, expect, it } from 'vitest';
import { boreArea, firstValues, nextTry, notNumbers } from './measure-form.js';
import { testUnit } from './test-unit.js';

describe('the form of a measured unit', () => {
  it('keeps the area of the unit to the last digit while its diameter stands as it was', () => {
    expect(boreArea(firstValues(testUnit), testUnit)).toBe(907.9);
  });

  it('takes the area from a diameter that was measured', () => {
    expect(boreArea({ boreMm: '20' }, testUnit)).toBeCloseTo(314.159, 3);
  });

  it('holds the next try at the travel of the last one', () => {
    const next = nextTry([{ extendedPsi: '60', travelMm: '120', heldPsi: '131' }]);
    expect(next).toEqual({ extendedPsi: '', travelMm: '120', heldPsi: '' });
  });

  it('names words where figures belong, by the path of the field', () => {
    const values = {
      ...firstValues(testUnit),
      hoseVolumeMl: 'long',
      tries: [{ extendedPsi: '60', travelMm: '12o', heldPsi: '' }],
    };
    expect(Object.keys(notNumbers(values))).toEqual(['hoseVolumeMl', 'tries.0.travelMm']);
  });
});
