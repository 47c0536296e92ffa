import { describe, expect, it } from 'vitest';
import { limitOf, ninetyPercent } from './interval.js';

describe('how sure a measured volume is', () => {
  it('lies 9 times in 10 within 1.645 standard uncertainties, and never below nothing', () => {
    expect(ninetyPercent(227, 2)).toEqual({ lower: 227 - 3.29, upper: 227 + 3.29 });
    expect(ninetyPercent(3, 4).lower).toBe(0);
  });

  it('is limited by the greatest share', () => {
    const shares = [
      { of: 'hoseVolume' as const, sharePct: 70 },
      { of: 'boreArea' as const, sharePct: 30 },
    ];
    expect(limitOf({ shares, message: '' })).toBe('hoseVolume');
  });

  it('names what limits a refused volume where the service does', () => {
    const message = 'the volume is only known to 4.2 %, limited by gaugeZero';
    expect(limitOf({ shares: [], message })).toBe('gaugeZero');
    expect(limitOf({ shares: [], message: 'the pressure hardly rises' })).toBeNull();
  });
});
