import { describe, expect, it } from 'vitest';
import type { EndSetup, Setup } from '../http/reads/setups.js';
import { setupChanges } from './setup-changes.js';

const end = (change: Partial<EndSetup> = {}): EndSetup => ({
  unitId: 'u',
  pressurePsi: 71,
  spacers: 2,
  reboundClicks: 8,
  compressionClicks: null,
  ...change,
});

const setup = (fork: EndSetup, shock: EndSetup | null): Setup => ({
  id: 's',
  bikeId: 'b',
  revision: 1,
  previousId: null,
  fork,
  shock,
  filledAltitudeM: null,
  filledTemperatureC: null,
  note: '',
  createdAt: '2026-05-09T10:30:00Z',
  createdBy: 'a',
});

describe('what changed between two set-ups', () => {
  it('names spacers and pressure with their signs', () => {
    expect(setupChanges(setup(end(), null), setup(end({ spacers: 3, pressurePsi: 68 }), null))).toEqual([
      'fork +1\u00a0spacer, −3\u00a0psi',
    ]);
  });

  it('is nothing where nothing changed', () => {
    expect(setupChanges(setup(end(), end()), setup(end(), end()))).toEqual([]);
  });

  it('tells a click from a click that was noted for the first time', () => {
    expect(
      setupChanges(setup(end(), end()), setup(end({ compressionClicks: 5 }), end({ reboundClicks: 6 }))),
    ).toEqual(['fork compression 5', 'shock rebound −2']);
  });

  it('another unit is a change of its own: its pressure compares with nothing', () => {
    expect(setupChanges(setup(end(), null), setup(end({ unitId: 'v', pressurePsi: 60 }), null))).toEqual([
      'another fork',
    ]);
  });
});
