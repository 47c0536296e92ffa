import { describe, expect, it } from 'vitest';
import { assumedBehindNegative, assumedBehindPositive, isBoreAssumed } from './assumed-of-unit.js';
import { firstValues } from './measure-form.js';
import { testUnit } from './test-unit.js';

const values = firstValues(testUnit);

describe('what of the unit is assumed behind a measured volume', () => {
  it('is its bore, until somebody measures it', () => {
    expect(isBoreAssumed(values, testUnit)).toBe(true);
    expect(isBoreAssumed({ boreMm: '34.1' }, testUnit)).toBe(false);
    expect(assumedBehindPositive(values, testUnit)).toEqual(['Bore area 907.9\u00a0mm²']);
  });

  it('is its spacers only where some are in it', () => {
    const withSpacers = { ...values, spacers: '2' };
    expect(assumedBehindPositive(withSpacers, testUnit)).toContain('Volume of one spacer 10\u00a0mL');
  });

  it('is nothing that was entered from papers', () => {
    const sources = { boreAreaMm2: 'entered', shaftAreaMm2: 'entered' } as const;
    expect(assumedBehindNegative(values, { ...testUnit, sources })).toEqual([
      'Chambers equalise at 3\u00a0mm',
    ]);
  });
});
