import { describe, expect, it } from 'vitest';
import { leverageText, readLeverage } from './leverage.js';

const table = [
  { shockTravelMm: 0, leverageRatio: 3.05 },
  { shockTravelMm: 32.5, leverageRatio: 2.75 },
  { shockTravelMm: 65, leverageRatio: 2.6 },
];

describe('a typed leverage table', () => {
  it('reads back what it has written', () => {
    expect(readLeverage(leverageText(table))).toEqual({ table });
  });

  it('takes columns pasted from a spreadsheet, commas as decimal points and empty lines', () => {
    expect(readLeverage('0\t3,05\n\n32,5\t2,75\n65;2.6\n')).toEqual({ table });
  });

  it.each([
    ['0 3.05\nhalf 2.8', 2],
    ['0 3.05\n65', 2],
    ['0 3.05 1', 1],
  ])('names the line that is none: %j', (text, badLine) => {
    expect(readLeverage(text)).toEqual({ badLine });
  });

  it('is empty for a bike without a shock', () => {
    expect(readLeverage('')).toEqual({ table: [] });
  });
});
