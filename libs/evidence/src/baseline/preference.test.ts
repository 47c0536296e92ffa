import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DEFAULT_RESERVE_PREFERENCE,
  learnPreference,
  preferredSagBand,
  type KeptValue,
} from './preference.js';

const keep = (riderId: string, values: readonly number[]): KeptValue[] =>
  values.map((value) => ({ riderId, value }));

describe('a preference', () => {
  it('with nothing kept is the default, and says so', () => {
    const preference = learnPreference([], 'me');
    expect(preference.source).toBe('default');
    expect(preference.mean).toBeCloseTo(DEFAULT_RESERVE_PREFERENCE.mean, 9);
  });

  it('lies between what the rider and what the team has kept, nearer to the rider the more there is', () => {
    const team = [...keep('a', [0.01, 0.011, 0.012, 0.01]), ...keep('b', [0.012, 0.01, 0.011])];
    const few = learnPreference([...team, ...keep('me', [0.03])], 'me');
    const many = learnPreference([...team, ...keep('me', new Array<number>(8).fill(0.03))], 'me');
    expect(few.source).toBe('this rider');
    expect(few.mean).toBeGreaterThan(0.0115);
    expect(few.mean).toBeLessThan(0.03);
    expect(many.mean).toBeGreaterThan(few.mean);
    expect(many.mean).toBeLessThan(0.03);
    expect(learnPreference(team, 'me')).toMatchObject({ source: 'the team', counts: { own: 0, team: 7 } });
  });

  it('does not depend on the unit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 0.04, noNaN: true }), { minLength: 1, maxLength: 6 }),
        (values) => {
          const metres = learnPreference(keep('me', values), 'me');
          const { mean, sd, betweenRiders, withinRider } = DEFAULT_RESERVE_PREFERENCE;
          const prior = {
            mean: 1e3 * mean,
            sd: 1e3 * sd,
            betweenRiders: 1e3 * betweenRiders,
            withinRider: 1e3 * withinRider,
          };
          const millimetres = learnPreference(
            keep(
              'me',
              values.map((value) => 1e3 * value),
            ),
            'me',
            prior,
          );
          // Stored numbers have eight digits.
          expect(millimetres.mean).toBeCloseTo(1e3 * metres.mean, 4);
        },
      ),
      { numRuns: 20 },
    );
  });
});

describe('the sag band', () => {
  const usual = { min: 0.15, max: 0.2 };

  it('stays the usual one until three decisions show another', () => {
    expect(preferredSagBand(keep('me', [0.22, 0.22]), 'me', usual)).toEqual(usual);
    const own = preferredSagBand(keep('me', [0.22, 0.22, 0.21, 0.22]), 'me', usual);
    expect((own.min + own.max) / 2).toBeGreaterThan(0.195);
    expect(own.max - own.min).toBeCloseTo(0.05, 12);
  });
});
