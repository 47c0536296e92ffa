import { describe, expect, it } from 'vitest';
import { uniformNumbers } from '../numerics/random.js';
import { compareFeel, type FeelQuestion } from './compare-feel.js';
import { compareRatings } from './ratings.js';

const ASPECTS = ['support', 'comfort', 'ride height', 'fatigue'];
const ARMS = ['b', 'c', 'd'];
const EIGHT_UP = { a: [5, 4, 5, 4, 5, 4, 5, 4], b: [1, 2, 1, 2, 1, 2, 1, 2] };
const SAME = { a: [3, 4, 3, 4, 3, 4, 3, 4], b: [3, 4, 3, 4, 3, 4, 3, 4] };

/** Three set-ups against the current one in four aspects; ratings of `runs` runs each that differ by nothing. */
function withoutDifference(runs: number, uniform: () => number) {
  const rate = () => Array.from({ length: runs }, () => 1 + Math.floor(5 * uniform()));
  return ASPECTS.map((aspect) => ({
    aspect,
    current: rate(),
    others: ARMS.map((arm) => ({ arm, ratings: rate() })),
  }));
}

const questionsOf = (rated: ReturnType<typeof withoutDifference>, upTo = Infinity): FeelQuestion[] =>
  rated.flatMap(({ aspect, current, others }) =>
    others.map(({ arm, ratings }) => ({
      arm,
      aspect,
      strata: [{ a: ratings.slice(0, upTo), b: current.slice(0, upTo) }],
    })),
  );

const saysRated = ({ sentence }: { sentence: string }) => /^Rated (higher|lower)/.test(sentence);

describe('feel in several aspects', () => {
  it('is compared as ratings are, where there is one comparison alone', () => {
    const { among, alpha, rated } = compareFeel([{ arm: 'b', aspect: 'support', strata: [EIGHT_UP] }], null);
    expect({ among, alpha }).toEqual({ among: 1, alpha: 0.05 });
    const alone = compareRatings([EIGHT_UP]);
    expect(rated).toEqual([
      { ...alone, arm: 'b', aspect: 'support', pAmong: alone.p, smallestPAmong: alone.smallestP },
    ]);
  });

  it('says higher or lower by chance of at most 5 families in 100, where each alone at 5 % says it of many more', () => {
    // 1,000 families of twelve: at most 5 % with a standard error of 0.7 %; three of them.
    const uniform = uniformNumbers(11);
    const families = Array.from({ length: 1_000 }, () => questionsOf(withoutDifference(8, uniform)));
    const share = (wrong: (family: FeelQuestion[]) => boolean) =>
      families.filter(wrong).length / families.length;
    expect(share((family) => compareFeel(family, null).rated.some(saysRated))).toBeLessThan(0.07);
    const alone = share((family) => family.some(({ strata }) => saysRated(compareRatings(strata))));
    expect(alone).toBeGreaterThan(0.2);
  });

  it('does so over all looks together', () => {
    const uniform = uniformNumbers(12);
    const wrong = Array.from({ length: 400 }, () => withoutDifference(12, uniform)).filter((rated) =>
      [1, 2, 3, 4].some((number) =>
        compareFeel(questionsOf(rated, 3 * number), { number, of: 4 }).rated.some(saysRated),
      ),
    ).length;
    // 5 % of 400 with a standard error of 1.1 %; three of them.
    expect(wrong / 400).toBeLessThan(0.083);
  });

  it('still finds what is plain among twelve, and says among how many', () => {
    const questions = ARMS.flatMap((arm) =>
      ASPECTS.map((aspect) => ({
        arm,
        aspect,
        strata: [arm === 'b' && aspect === 'comfort' ? EIGHT_UP : SAME],
      })),
    );
    const { among, rated } = compareFeel(questions, null);
    expect(among).toBe(12);
    const told = rated.filter(saysRated);
    expect(told.map(({ arm, aspect }) => [arm, aspect])).toEqual([['b', 'comfort']]);
    // Exact: 2 of the 12,870 ways to choose 8 of 16 lie as far out; ties among equal ratings add none beyond them.
    expect(told[0]?.pAmong).toBeCloseTo((12 * 2) / 12_870, 12);
    expect(told[0]?.sentence).toMatch(
      /^Rated higher \(exact P below 0\.001; among 12 comparisons of ratings 0\.0019, against 0\.050\)\./,
    );
  });

  it('says why what stands alone does not stand among them', () => {
    const leaning = { a: [4, 4, 5, 4, 5, 3, 4, 3], b: [3, 2, 3, 4, 2, 3, 3, 4] };
    const questions = ASPECTS.map((aspect, i) => ({ arm: 'b', aspect, strata: [i === 0 ? leaning : SAME] }));
    expect(saysRated(compareRatings([leaning]))).toBe(true);
    expect(compareFeel(questions, null).rated[0]?.sentence).toMatch(
      /^Alone this would say 'rated higher' \(exact P 0\.0\d+\); among 4 comparisons of ratings that may be chance\.$/,
    );
  });

  it('says that so few ratings cannot stand out, against the level of the look too', () => {
    const four = { a: [5, 4, 5, 4], b: [1, 2, 2, 1] };
    const questions = ASPECTS.map((aspect) => ({ arm: 'b', aspect, strata: [four] }));
    // The smallest of four against four is 0.029: four times that is above 5 %.
    expect(compareFeel(questions, null).rated[0]).toMatchObject({
      status: 'too few ratings',
      sentence:
        'Too few ratings to tell: the smallest P value that they can give among 4 comparisons of ratings is 0.11, against 0.050.',
    });
    const [one] = compareFeel([{ arm: 'b', aspect: 'support', strata: [four] }], { number: 1, of: 4 }).rated;
    expect(one).toMatchObject({ status: 'too few ratings' });
    expect(one?.sentence).toContain('at look 1 is 0.029, against below 0.001');
  });

  it('shares nothing with what nobody rated', () => {
    const { among, rated } = compareFeel(
      [
        { arm: 'b', aspect: 'support', strata: [EIGHT_UP] },
        { arm: 'b', aspect: 'comfort', strata: [{ a: [4], b: [] }] },
      ],
      null,
    );
    expect(among).toBe(1);
    expect(rated[1]).toMatchObject({ status: 'no ratings', pAmong: null, smallestPAmong: null });
    expect(compareFeel([], { number: 1, of: 3 })).toMatchObject({ among: 0, rated: [] });
  });
});
