import { chiSquareQuantile } from '../numerics/distributions.js';
import { tooFewDf } from './few-df.js';
import {
  powerOfDifference,
  powerOfEquivalence,
  runsForPower,
  WANTED_POWER,
  type PowerQuestion,
} from '../plan/power.js';
import type { ModeratedVariance } from './moderated-variance.js';

/** What an undecided difference rests on. */
export interface OpenQuestion {
  variance: ModeratedVariance;
  /** Variance of the difference in units of the variance of one run. */
  unscaledVariance: number;
  /** Timed runs of the two set-ups. */
  runs: { arm: number; current: number };
  /** Set-ups in the comparison, and those compared with the current one. */
  arms: number;
  comparisons: number;
  alpha: number;
  /** Whether the scatter leans on past sessions: a verdict then needs no degrees of freedom of its own. */
  borrowed: boolean;
  /** On the log scale. */
  margin: number;
}

/** Runs of each set-up that are still to be ridden; null: more than a team can ride. */
export interface RunsStillNeeded {
  /** To find a difference as large as the margin 8 times in 10. */
  forDifference: number | null;
  /** To show 8 times in 10 that a difference of 0 is within the margin. */
  forEquivalence: number | null;
  /** As forEquivalence, if the scatter is at the upper end of what this session allows. */
  forEquivalenceAtMost: number | null;
}

/** The scatter is no larger than its upper limit with this confidence (1 − 0.2). */
const LOWER_SHARE = 0.2;

/**
 * Runs still needed of each set-up, for the margin and never for the difference that was seen (hoenig2001): the
 * precision of one more balanced block is that of the runs so far, its degrees of freedom one a run. 0: runs like these
 * should be enough, at the last look.
 */
export function runsStillNeeded(open: OpenQuestion): RunsStillNeeded {
  const { variance, runs, margin } = open;
  const now = 2 / (1 / runs.arm + 1 / runs.current);
  const alpha = open.alpha / open.comparisons;
  const question = (more: number): PowerQuestion => ({
    unscaledSe: Math.sqrt(open.unscaledVariance * (now / (now + more))),
    df: variance.df + open.arms * more,
    alpha,
  });
  /** Nothing is told, however small the scatter, before there are the degrees of freedom that a verdict asks for. */
  const needed = (power: (question: PowerQuestion) => number): number | null => {
    const powerOf = (more: number): number => {
      const asked = question(more);
      return !open.borrowed && tooFewDf(asked.df) ? 0 : power(asked);
    };
    return runsForPower(powerOf, WANTED_POWER, 0);
  };
  const sd = Math.sqrt(variance.variance);
  const upperSd =
    variance.df === Number.POSITIVE_INFINITY
      ? sd
      : sd * Math.sqrt(variance.df / chiSquareQuantile(LOWER_SHARE, variance.df));
  const equivalence = (scatter: number): number | null =>
    needed((asked) => powerOfEquivalence(0, margin, scatter, asked));
  return {
    forDifference: needed((asked) => powerOfDifference(margin, sd, asked)),
    forEquivalence: equivalence(sd),
    forEquivalenceAtMost: equivalence(upperSd),
  };
}
