import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  learnPreferences,
  preferredSagBand,
  reservePrior,
  sagPrior,
  type KeptValue,
  type Preference,
} from './preference.js';

const keep = (riderId: string, values: readonly number[]): KeptValue[] =>
  values.map((value) => ({ riderId, value }));

const USUAL = 0.06;

const learned = (kept: readonly KeptValue[], riderId: string): Preference =>
  learnPreferences(kept, reservePrior(USUAL))(riderId);

describe('a preference', () => {
  it('with nothing kept is the usual wish, and says so', () => {
    const preference = learned([], 'me');
    expect(preference.source).toBe('default');
    expect(preference.mean).toBeCloseTo(USUAL, 9);
  });

  it('lies between what the rider and what the team has kept, nearer to the rider the more there is', () => {
    const team = [...keep('a', [0.06, 0.066, 0.072, 0.06]), ...keep('b', [0.072, 0.06, 0.066])];
    const few = learned([...team, ...keep('me', [0.15])], 'me');
    const many = learned([...team, ...keep('me', new Array<number>(8).fill(0.15))], 'me');
    expect(few.source).toBe('this rider');
    expect(few.mean).toBeGreaterThan(0.069);
    expect(few.mean).toBeLessThan(0.15);
    expect(many.mean).toBeGreaterThan(few.mean);
    expect(many.mean).toBeLessThan(0.15);
    expect(learned(team, 'me')).toMatchObject({ source: 'the team', counts: { own: 0, team: 7 } });
  });

  it('does not depend on the unit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 0.04, noNaN: true }), { minLength: 1, maxLength: 6 }),
        (values) => {
          const shares = learned(keep('me', values), 'me');
          const { mean, sd, betweenRiders, withinRider } = reservePrior(USUAL);
          const prior = {
            mean: 1e3 * mean,
            sd: 1e3 * sd,
            betweenRiders: 1e3 * betweenRiders,
            withinRider: 1e3 * withinRider,
          };
          const thousandths = keep(
            'me',
            values.map((value) => 1e3 * value),
          );
          const inThousandths = learnPreferences(thousandths, prior)('me');
          // Stored numbers have eight digits.
          expect(inThousandths.mean).toBeCloseTo(1e3 * shares.mean, 3);
        },
      ),
      { numRuns: 20 },
    );
  });
});

describe('the sag band', () => {
  const usual = { min: 0.15, max: 0.2 };

  const bandOf = (values: readonly number[]) =>
    preferredSagBand(learnPreferences(keep('me', values), sagPrior(usual))('me'), usual);

  it('stays the usual one until three decisions show another', () => {
    expect(bandOf([0.22, 0.22])).toEqual(usual);
    const own = bandOf([0.22, 0.22, 0.21, 0.22]);
    expect((own.min + own.max) / 2).toBeGreaterThan(0.195);
    expect(own.max - own.min).toBeCloseTo(0.05, 12);
  });
});
