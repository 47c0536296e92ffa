import { requireBetween } from '../errors.js';
import { normalUpperTail } from '../numerics/normal.js';

/** Finite mixture of normal distributions; the weights add up to 1. */
export interface NormalMixture {
  weights: number[];
  means: number[];
  sds: number[];
}

/** A posterior in short: mean, standard deviation and three quantiles, all in the unit of the quantity. */
export interface Summary {
  mean: number;
  sd: number;
  q05: number;
  q50: number;
  q95: number;
}

/** The levels of a Summary. */
export const SUMMARY_LEVELS = { q05: 0.05, q50: 0.5, q95: 0.95 } as const;

/** Upper tail of a mixture at x, dimensionless: Σ w Q((x − m)/s); relative accuracy is kept far out. */
export function mixtureUpperTail(mixture: NormalMixture, x: number): number {
  let tail = 0;
  for (const [i, weight] of mixture.weights.entries()) {
    const mean = mixture.means[i] as number;
    const sd = mixture.sds[i] as number;
    tail += weight * (sd > 0 ? normalUpperTail((x - mean) / sd) : Number(x < mean));
  }
  return tail;
}

/** Lower tail of a mixture at x, dimensionless: the upper tail of its mirror image. */
function mixtureLowerTail(mixture: NormalMixture, x: number): number {
  return mixtureUpperTail({ ...mixture, means: mixture.means.map((mean) => -mean) }, -x);
}

/** Standard deviations beyond every component's mean that bracket any p a double can hold. */
const BRACKET_SDS = 39;
/** Bisection stops when the bracket is this share of the widest component. */
const QUANTILE_TOLERANCE = 1e-10;

/**
 * Quantile of a mixture, in the unit of its means: the x below which the share p lies.
 *
 * Bisection on the tail that is the smaller one, so that p near 0 keeps its digits. 0 < p < 1; other p throw
 * EvidenceInputError.
 */
export function mixtureQuantile(mixture: NormalMixture, p: number): number {
  requireBetween('p', p, 'share', Number.MIN_VALUE, 1 - Number.EPSILON / 2);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let widest = 0;
  for (const [i, mean] of mixture.means.entries()) {
    const sd = mixture.sds[i] as number;
    low = Math.min(low, mean - BRACKET_SDS * sd);
    high = Math.max(high, mean + BRACKET_SDS * sd);
    widest = Math.max(widest, sd);
  }
  const isBelow = (x: number): boolean =>
    p < 0.5 ? mixtureLowerTail(mixture, x) < p : mixtureUpperTail(mixture, x) > 1 - p;
  while (high - low > QUANTILE_TOLERANCE * widest) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (isBelow(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Mean, standard deviation and quantiles of a mixture. */
export function summaryOfMixture(mixture: NormalMixture): Summary {
  let mean = 0;
  for (const [i, weight] of mixture.weights.entries()) mean += weight * (mixture.means[i] as number);
  let variance = 0;
  for (const [i, weight] of mixture.weights.entries()) {
    variance += weight * ((mixture.sds[i] as number) ** 2 + ((mixture.means[i] as number) - mean) ** 2);
  }
  return {
    mean,
    sd: Math.sqrt(variance),
    q05: mixtureQuantile(mixture, SUMMARY_LEVELS.q05),
    q50: mixtureQuantile(mixture, SUMMARY_LEVELS.q50),
    q95: mixtureQuantile(mixture, SUMMARY_LEVELS.q95),
  };
}
