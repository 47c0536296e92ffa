import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testFork } from '../features/workbench/model/test-bike.js';
import { pumpTo } from './pump-to.js';
import { todaysPressure } from './todays-pressure.js';

const fill = { unitId: 'fork', pressurePsi: 71, spacers: 2, reboundClicks: null, compressionClicks: null };
const setup = (filledAltitudeM: number | null, filledTemperatureC: number | null) => ({
  id: 'setup',
  bikeId: 'bike',
  revision: 1,
  previousId: null,
  fork: fill,
  shock: null,
  filledAltitudeM,
  filledTemperatureC,
  note: '',
  createdAt: '2026-05-09T10:30:00Z',
  createdBy: 'account',
});
const air = (altitudeM: number, temperatureC: number) => ({ altitudeM, temperatureC, isAssumed: false });

describe("today's pressure", () => {
  it('is what it was filled as where the air is the same', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 3_000 }),
        fc.integer({ min: -5, max: 40 }),
        (altitude, warmth) => {
          const today = todaysPressure(
            setup(altitude, warmth),
            fill,
            testFork,
            air(altitude, warmth),
            pumpTo,
          );
          // A root of the engine's, found to far less than a gauge shows.
          expect(today?.pumpToPsi).toBeCloseTo(71, 6);
          expect(today?.leftAlonePsi).toBeCloseTo(71, 6);
        },
      ),
    );
  });

  it('left alone falls with the cold and rises with the altitude, by the gas law', () => {
    const today = todaysPressure(setup(420, 21), fill, testFork, air(1_450, 6), pumpTo);
    // (71 psi + 96.4 kPa)·(279.15 K/294.15 K) − 85.1 kPa, with the standard atmosphere at both altitudes.
    expect(today?.leftAlonePsi).toBeCloseTo(68.3, 1);
    expect(today?.pumpToPsi).toBeGreaterThan(today?.leftAlonePsi ?? Infinity);
  });

  it('needs no correction where it was pumped at the track', () => {
    expect(todaysPressure(setup(null, null), fill, testFork, air(1_450, 6), pumpTo)).toBeNull();
  });

  it('is not recommended without the limits of the unit, nor beyond them', () => {
    const open = { ...testFork, limits: { ...testFork.limits, maxPressurePsi: null } };
    const tight = { ...testFork, limits: { ...testFork.limits, maxPressurePsi: 60 } };
    for (const end of [open, tight]) {
      expect(todaysPressure(setup(420, 21), fill, end, air(1_450, 6), pumpTo)?.pumpToPsi).toBeNull();
    }
  });

  it('is not known before the air is, and nothing where it was pumped at the track', () => {
    expect(todaysPressure(setup(300, 12), fill, testFork, undefined, pumpTo)).toBeUndefined();
    expect(todaysPressure(setup(null, null), fill, testFork, undefined, pumpTo)).toBeNull();
    expect(todaysPressure(setup(null, null), fill, testFork, air(760, 10), pumpTo)).toBeNull();
  });
});
