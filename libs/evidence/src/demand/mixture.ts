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

function mixtureDensity(mixture: NormalMixture, x: number): number {
  let density = 0;
  for (const [i, weight] of mixture.weights.entries()) {
    const sd = mixture.sds[i] as number;
    const z = (x - (mixture.means[i] as number)) / sd;
    density += (weight / sd) * Math.exp(-0.5 * z * z);
  }
  return density / Math.sqrt(2 * Math.PI);
}

/** Standard deviations beyond every component's mean that bracket any p a double can hold. */
const BRACKET_SDS = 39;
/** The quantile is settled when a step is this share of the widest component. */
const QUANTILE_TOLERANCE = 1e-11;
const MOST_STEPS = 200;

/**
 * Quantile of a mixture, in the unit of its means: the x below which the share p lies.
 *
 * Newton's method on the log of the tail that is the smaller one, so that p near 0 keeps its digits, kept inside a
 * bracket by bisection. 0 < p < 1; other p throw EvidenceInputError.
 */
export function mixtureQuantile(mixture: NormalMixture, p: number): number {
  requireBetween('p', p, 'share', Number.MIN_VALUE, 1 - Number.EPSILON / 2);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let widest = 0;
  let x = 0;
  for (const [i, mean] of mixture.means.entries()) {
    const sd = mixture.sds[i] as number;
    low = Math.min(low, mean - BRACKET_SDS * sd);
    high = Math.max(high, mean + BRACKET_SDS * sd);
    widest = Math.max(widest, sd);
    x += (mixture.weights[i] as number) * mean;
  }
  const lower = p < 0.5;
  const wanted = lower ? p : 1 - p;
  for (let step = 0; step < MOST_STEPS && high - low > QUANTILE_TOLERANCE * widest; step += 1) {
    const tail = lower ? mixtureLowerTail(mixture, x) : mixtureUpperTail(mixture, x);
    if (tail > wanted === lower) high = x;
    else low = x;
    const slope = mixtureDensity(mixture, x) / tail;
    const newton = x + (Math.log(wanted / tail) / slope) * (lower ? 1 : -1);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - x) <= QUANTILE_TOLERANCE * widest) return next;
    x = next;
  }
  return x;
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
