import { EvidenceInputError } from '../errors.js';
import { oddsWords, ratingOdds, type RatingOdds, type RatingStratum } from './rating-odds.js';

/** What ratings say about two set-ups. */
export interface RatingComparison {
  status: 'compared' | 'no ratings' | 'all equal' | 'too few ratings';
  sentence: string;
  counts: { a: number; b: number };
  medians: { a: number | null; b: number | null };
  /** P(a rating of a is above one of b) + ½ P(equal), over pairs of the same rider; null without pairs. */
  superiority: number | null;
  /** Two-sided exact P value, and the smallest that these numbers of ratings can give. */
  p: number | null;
  smallestP: number | null;
  /** null where there are too few ratings for a model. */
  odds: RatingOdds | null;
}

const LOWEST_RATING = 1;
const HIGHEST_RATING = 5;
const ALPHA = 0.05;
/** Sums closer than this are the same number seen through rounding: half of it may be lost with each rider. */
const ROUNDING = 1e-9;
/** Statistics closer than this are the same: more than the roundings of all riders, less than two that differ. */
const SAME = 1e-7;

/**
 * Exact comparison of ratings, P values dimensionless.
 *
 * Ratings are exchanged between the two set-ups within each rider; the statistic is the sum over riders of
 * (Σ mid-ranks of a)/(n + 1) (vanelteren1960), its distribution counted exactly. Two-sided: at least as far from the
 * mean. Never a mean of ratings. Throws EvidenceInputError for a rating that is not 1, 2, 3, 4 or 5.
 */
export function compareRatings(strata: readonly RatingStratum[]): RatingComparison {
  for (const rating of strata.flatMap(({ a, b }) => [...a, ...b])) {
    if (!Number.isInteger(rating) || rating < LOWEST_RATING || rating > HIGHEST_RATING) {
      throw new EvidenceInputError('rating', rating, 'rating', 'whole numbers from 1 to 5');
    }
  }
  const a = strata.flatMap((stratum) => stratum.a);
  const b = strata.flatMap((stratum) => stratum.b);
  const both = strata.filter((stratum) => stratum.a.length > 0 && stratum.b.length > 0);
  const base = {
    counts: { a: a.length, b: b.length },
    medians: { a: medianOf(a), b: medianOf(b) },
  };
  if (both.length === 0) {
    const sentence = 'No rider has rated both set-ups: nothing to compare.';
    return {
      ...base,
      status: 'no ratings',
      sentence,
      superiority: null,
      p: null,
      smallestP: null,
      odds: null,
    };
  }
  const superiority = superiorityOf(both);
  const { p, smallest } = permutationTest(both);
  const odds = ratingOdds(both);
  const measured = { ...base, superiority, p, smallestP: smallest, odds };
  const ratings = new Set(both.flatMap((stratum) => [...stratum.a, ...stratum.b]));
  if (ratings.size === 1)
    return { ...measured, status: 'all equal', sentence: 'All ratings are equal: no test.' };
  if (smallest > ALPHA) {
    const sentence = `With this many ratings the exact test cannot reach 5 %: its smallest P value is ${smallest.toFixed(2)}.`;
    return { ...measured, status: 'too few ratings', sentence };
  }
  const sentence =
    p < ALPHA
      ? `Rated ${superiority > 0.5 ? 'higher' : 'lower'} (exact P ${p.toFixed(3)}).`
      : `The ratings do not tell the two apart (exact P ${p.toFixed(2)}).`;
  return { ...measured, status: 'compared', sentence: sentence + oddsWords(odds) };
}

function medianOf(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((x, y) => x - y);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] as number)) / 2;
}

function superiorityOf(strata: readonly RatingStratum[]): number {
  let sum = 0;
  let pairs = 0;
  for (const { a, b } of strata) {
    for (const x of a) for (const y of b) sum += x > y ? 1 : x === y ? 0.5 : 0;
    pairs += a.length * b.length;
  }
  return sum / pairs;
}

function permutationTest(strata: readonly RatingStratum[]): { p: number; smallest: number } {
  let distribution = new Map<number, number>([[0, 1]]);
  let observed = 0;
  for (const { a, b } of strata) {
    const ranks = midRanks([...a, ...b]);
    const weight = 1 / (ranks.length + 1);
    observed += weight * ranks.slice(0, a.length).reduce((sum, rank) => sum + rank, 0);
    distribution = convolve(distribution, sumsOfSubsets(ranks, a.length), weight);
  }
  const total = [...distribution.values()].reduce((sum, ways) => sum + ways, 0);
  const centre = [...distribution].reduce((sum, [value, ways]) => sum + value * ways, 0) / total;
  const tail = (distance: number): number =>
    [...distribution].reduce(
      (sum, [value, ways]) => sum + (Math.abs(value - centre) >= distance - SAME ? ways : 0),
      0,
    ) / total;
  const furthest = [...distribution.keys()].reduce(
    (most, value) => Math.max(most, Math.abs(value - centre)),
    0,
  );
  return { p: tail(Math.abs(observed - centre)), smallest: tail(furthest) };
}

function midRanks(values: readonly number[]): number[] {
  return values.map((value) => {
    const below = values.filter((other) => other < value).length;
    const equal = values.filter((other) => other === value).length;
    return below + (equal + 1) / 2;
  });
}

/** Number of ways to reach each sum with `size` of the ranks; twice the ranks are whole, so sums are exact. */
function sumsOfSubsets(ranks: readonly number[], size: number): Map<number, number> {
  const ways = Array.from({ length: size + 1 }, () => new Map<number, number>());
  ways[0]?.set(0, 1);
  for (const [i, rank] of ranks.entries()) {
    for (let taken = Math.min(size, i + 1); taken > 0; taken -= 1) {
      for (const [sum, count] of ways[taken - 1] as Map<number, number>) {
        const target = ways[taken] as Map<number, number>;
        target.set(sum + rank, (target.get(sum + rank) ?? 0) + count);
      }
    }
  }
  return ways[size] as Map<number, number>;
}

/** Distribution of a sum of two independent parts, the second scaled; sums that differ by rounding alone are one. */
function convolve(
  first: ReadonlyMap<number, number>,
  second: ReadonlyMap<number, number>,
  scale: number,
): Map<number, number> {
  const result = new Map<number, number>();
  for (const [x, waysX] of first) {
    for (const [y, waysY] of second) {
      const sum = Math.round((x + scale * y) / ROUNDING) * ROUNDING;
      result.set(sum, (result.get(sum) ?? 0) + waysX * waysY);
    }
  }
  return result;
}
