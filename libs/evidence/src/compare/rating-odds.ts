import { proportionalOdds } from './proportional-odds.js';

/** Ratings 1 to 5 of two set-ups by one rider. */
export interface RatingStratum {
  a: readonly number[];
  b: readonly number[];
}

/** How many times as high the odds of a higher rating are, with its 95 % interval; dimensionless. */
export interface RatingOdds {
  readonly ratio: number;
  readonly low: number;
  readonly high: number;
}

/** Ratings for each parameter, thresholds and riders counted: with fewer the interval is too narrow (judgement, tested). */
const ENOUGH_A_PARAMETER = 5;
/** Ratings of each of the two: with fewer, one odd run decides (judgement). */
const ENOUGH_OF_EACH = 8;
const NORMAL_975 = 1.959963984540054;

/**
 * Odds of a higher rating of a against b, dimensionless: proportional odds with a level for each rider (mccullagh1980),
 * Wald interval. null where there are too few ratings for it, or where they leave no finite estimate.
 */
export function ratingOdds(strata: readonly RatingStratum[]): RatingOdds | null {
  const both = strata.filter(({ a, b }) => a.length > 0 && b.length > 0);
  const all = both.flatMap(({ a, b }) => [...a, ...b]);
  const parameters = new Set(all).size - 1 + both.length;
  const fewer = Math.min(
    ...(['a', 'b'] as const).map((side) => both.flatMap((stratum) => stratum[side]).length),
  );
  if (fewer < ENOUGH_OF_EACH || all.length < ENOUGH_A_PARAMETER * parameters) return null;
  const rows = both.flatMap(({ a, b }, rider) => {
    const riders = both.slice(1).map((_, i) => (i + 1 === rider ? 1 : 0));
    return (
      [
        [a, 1],
        [b, 0],
      ] as const
    ).flatMap(([ratings, isA]) => ratings.map((level) => ({ level, x: [isA, ...riders], count: 1 })));
  });
  const model = proportionalOdds(rows);
  if (model.status !== 'fitted') return null;
  const [effect, se] = [model.effects[0] as number, model.effectSes[0] as number];
  return {
    ratio: Math.exp(effect),
    low: Math.exp(effect - NORMAL_975 * se),
    high: Math.exp(effect + NORMAL_975 * se),
  };
}

/** The odds in words, behind another sentence; empty where there are none. */
export const oddsWords = (odds: RatingOdds | null): string =>
  odds === null
    ? ''
    : ` The odds of a higher rating are ${odds.ratio.toFixed(1)} times as high (95 %: ${odds.low.toFixed(1)} to ${odds.high.toFixed(1)}).`;
