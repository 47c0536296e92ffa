import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { workSteps, type UnitSetting } from './work-steps.js';

const now: UnitSetting = { pressure: 490_000, spacers: 2, rebound: 8, compression: null };
const clicks = fc.option(fc.integer({ min: 0, max: 30 }));
const setting = fc.record({
  pressure: fc.double({ min: 1e5, max: 2e6, noNaN: true }),
  spacers: fc.integer({ min: 0, max: 6 }),
  rebound: clicks,
  compression: clicks,
});

describe('the work at a unit', () => {
  it('is none where nothing changes that a gauge or an eye would find', () => {
    fc.assert(
      fc.property(setting, (any) => {
        expect(workSteps(any, any)).toEqual([]);
      }),
    );
    expect(workSteps(now, { ...now, pressure: now.pressure + 300 })).toEqual([]);
  });

  it('never opens a cap under pressure, nor pumps an open unit', () => {
    fc.assert(
      fc.property(setting, setting, (from, to) => {
        const steps = workSteps(from, to);
        const [air, open, spacers, close, pump] = (
          ['release-air', 'open-cap', 'move-spacers', 'close-cap', 'pump'] as const
        ).map((step) => steps.indexOf(step)) as [number, number, number, number, number];
        expect(open >= 0).toBe(from.spacers !== to.spacers);
        if (open < 0) return;
        expect([air, open, spacers, close, pump]).toEqual([air, air + 1, air + 2, air + 3, air + 4]);
        expect(air).toBeGreaterThan(0);
      }),
    );
  });

  it('opens nothing where only pressure and clicks change', () => {
    expect(workSteps(now, { ...now, pressure: 450_000, rebound: 9 })).toEqual([
      'write-down',
      'pump',
      'cycle',
      'set-rebound',
      'ride-slowly',
    ]);
    expect(workSteps(now, { ...now, compression: 4 })).toEqual([
      'write-down',
      'set-compression',
      'ride-slowly',
    ]);
  });

  it('leaves clicks alone that nobody has noted for the new setting', () => {
    expect(workSteps(now, { ...now, rebound: null })).toEqual([]);
  });

  it('mounts a unit of which nothing is known as one that is filled anew', () => {
    expect(workSteps(null, now)).toEqual(['mount-unit', 'pump', 'cycle', 'set-rebound', 'ride-slowly']);
  });
});
