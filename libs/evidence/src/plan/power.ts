import { normalUpperTail } from '../numerics/normal.js';
import { tUpperQuantile } from '../numerics/distributions.js';
import { meanOverScatter } from '../numerics/scatter.js';

/** One question to a comparison of two arms. */
export interface PowerQuestion {
  /** Standard error of the difference over the standard deviation of one run: √(variance inflation · 2/r). */
  unscaledSe: number;
  /** Degrees of freedom of the standard deviation. */
  df: number;
  /** Two-sided error rate of the difference, one-sided of each half of the equivalence test. */
  alpha: number;
}

/**
 * Probability that a two-sided t test finds a difference, dimensionless.
 *
 * P(|T′| > t_{1−α/2}), T′ non-central t with ncp = difference/(sd·unscaledSe), as the mean over the estimated scatter
 * of two normal tails (owen1965). difference and sd in the same unit; sd > 0; df > 0, Infinity for a known sd.
 */
export function powerOfDifference(difference: number, sd: number, question: PowerQuestion): number {
  const ncp = Math.abs(difference) / (sd * question.unscaledSe);
  const critical = tUpperQuantile(question.alpha / 2, question.df);
  return meanOverScatter(
    question.df,
    (s) => normalUpperTail(critical * s - ncp) + normalUpperTail(critical * s + ncp),
  );
}

/**
 * Probability that two one-sided tests find a difference inside ± margin, dimensionless (schuirmann1987, owen1965).
 *
 * Both halves reject when |estimate| < margin − t_{1−α} se: mean over the estimated scatter of the normal probability
 * of that interval. difference, margin and sd in the same unit; sd > 0.
 */
export function powerOfEquivalence(
  difference: number,
  margin: number,
  sd: number,
  question: PowerQuestion,
): number {
  const se = sd * question.unscaledSe;
  const critical = tUpperQuantile(question.alpha, question.df);
  const power = (s: number): number => {
    const reach = margin - critical * s * se;
    return normalUpperTail((-reach - difference) / se) - normalUpperTail((reach - difference) / se);
  };
  return meanOverScatter(question.df, power, { upTo: margin / (critical * se) });
}

/** Power that a plan is made for (common practice, no source). */
export const WANTED_POWER = 0.8;
/** No team rides more runs a set-up than this; beyond it the answer is "more than". */
const MOST_RUNS_AN_ARM = 2000;

/** One run a set-up tells nothing. */
const FEWEST_RUNS = 2;

/**
 * Smallest number of runs an arm, `fewest` or more, at which `power(runs)` reaches the wanted one; null when
 * MOST_RUNS_AN_ARM does not.
 */
export function runsForPower(
  power: (runsAnArm: number) => number,
  wanted: number = WANTED_POWER,
  fewest: number = FEWEST_RUNS,
): number | null {
  if (power(MOST_RUNS_AN_ARM) < wanted) return null;
  let low = fewest - 1;
  let high = MOST_RUNS_AN_ARM;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (power(middle) >= wanted) high = middle;
    else low = middle;
  }
  return high;
}

/** Smallest difference (in the unit of sd) that is found with the wanted power. */
export function detectableDifference(
  sd: number,
  question: PowerQuestion,
  wanted: number = WANTED_POWER,
): number {
  const STEPS = 60;
  const unit = sd * question.unscaledSe;
  let low = 0;
  let high = unit;
  while (powerOfDifference(high, sd, question) < wanted) high *= 2;
  for (let i = 0; i < STEPS; i += 1) {
    const middle = (low + high) / 2;
    if (powerOfDifference(middle, sd, question) < wanted) low = middle;
    else high = middle;
  }
  return high;
}
