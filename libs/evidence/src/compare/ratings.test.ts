import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareRatings } from './ratings.js';

const ratings = (least: number) =>
  fc.array(fc.integer({ min: 1, max: 5 }), { minLength: least, maxLength: 5 });
const strata = fc.array(fc.record({ a: ratings(0), b: ratings(0) }), { minLength: 1, maxLength: 3 });

describe('ratings', () => {
  it('exchanging the set-ups mirrors the superiority and keeps P', () => {
    fc.assert(
      fc.property(strata, (given) => {
        const forth = compareRatings(given);
        const back = compareRatings(given.map(({ a, b }) => ({ a: b, b: a })));
        expect(back.status).toBe(forth.status);
        if (forth.superiority === null || back.superiority === null) return;
        expect(back.superiority).toBeCloseTo(1 - forth.superiority, 12);
        expect(back.p).toBeCloseTo(forth.p ?? -1, 9);
        expect(forth.p).toBeGreaterThanOrEqual((forth.smallestP ?? 1) - 1e-12);
      }),
    );
  });

  it('counts what lies as far out as the ratings seen, though sums over several riders are rounded', () => {
    const given = [
      { a: [1, 2, 2, 5, 2], b: [1, 5, 1] },
      { a: [2, 3, 4, 3], b: [2, 1, 2, 1] },
      { a: [1, 1], b: [2, 3, 4] },
    ];
    const [forth, back] = [given, given.map(({ a, b }) => ({ a: b, b: a }))].map(compareRatings);
    expect(back?.p).toBeCloseTo(forth?.p ?? -1, 12);
  });

  it('three against three cannot reach 5 %, four against four can', () => {
    expect(compareRatings([{ a: [5, 5, 5], b: [1, 1, 1] }])).toMatchObject({
      status: 'too few ratings',
      p: 0.1,
    });
    const four = compareRatings([{ a: [5, 4, 5, 4], b: [1, 2, 2, 1] }]);
    expect(four.status).toBe('compared');
    expect(four.p).toBeCloseTo(2 / 70, 12);
  });

  it('a rider who rated only one set-up says nothing', () => {
    expect(compareRatings([{ a: [5, 5], b: [] }])).toMatchObject({ status: 'no ratings', p: null });
  });

  it('all equal ratings are no test', () => {
    expect(compareRatings([{ a: [3, 3, 3, 3], b: [3, 3, 3, 3] }]).status).toBe('all equal');
  });

  it('refuses what is not a rating', () => {
    expect(() => compareRatings([{ a: [0], b: [3] }])).toThrowError(/rating is 0/);
  });
});
