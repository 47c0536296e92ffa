import { tUpperQuantile } from '../numerics/distributions.js';
import { countOf, type ArmComparison } from './arm-comparison.js';
import { commonFactor, maxTCritical } from './max-t.js';
import type { RunsStillNeeded } from './runs-needed.js';
import { differenceTest, equivalenceTest, holmAdjusted } from './tests.js';
import type { TimedRun } from './time-model.js';
import { verdictOf } from './verdict.js';

/** Correlations that one common factor misses by more get Bonferroni's wider interval instead. */
const WORST_FACTOR_ERROR = 0.05;

/** Error rates: of this look, and of the last one that was agreed. */
export interface Levels {
  readonly now: number;
  readonly end: number;
}

/** A difference to the current arm that can be tested, on the log scale. */
export interface TestedDifference {
  arm: string;
  estimate: number;
  se: number;
  df: number;
  /** Runs of each set-up that are still to be ridden; null where they are not reckoned. */
  needed: RunsStillNeeded | null;
}

/** What the tests of all differences share. */
export interface TestFrame {
  /** Error rate of this look. */
  alpha: number;
  /** On the log scale. */
  margin: number;
  /** Whether the scatter leans on past sessions. */
  borrowed: boolean;
  whom: 'these riders' | 'riders in general';
  /** Covariance of two of the differences in any unit, by their places; null: no intervals are wanted. */
  covariance: ((i: number, j: number) => number) | null;
}

/** Tests of all set-ups that can be tested against the current one, with verdicts. */
export function testArms(
  timed: readonly TimedRun[],
  tested: readonly TestedDifference[],
  frame: TestFrame,
): ArmComparison[] {
  if (tested.length === 0) return [];
  const { alpha, margin } = frame;
  const pDifference = holmAdjusted(tested.map(({ estimate, se, df }) => differenceTest(estimate, se, df)));
  const pEquivalence = holmAdjusted(
    tested.map(({ estimate, se, df }) => equivalenceTest(estimate, se, df, margin).p),
  );
  const critical = frame.covariance && simultaneousCritical(tested, alpha, frame.covariance);
  return tested.map(({ arm, estimate, se, df, needed }, i) => {
    const basis = {
      estimate,
      se,
      df,
      pDifference: pDifference[i] as number,
      pEquivalence: pEquivalence[i] as number,
      alpha,
      margin,
      borrowed: frame.borrowed,
      whom: frame.whom,
    };
    const reasoned = verdictOf(basis, needed);
    return {
      ...reasoned,
      arm,
      timedRuns: countOf(timed, arm),
      difference: estimate,
      share: Math.expm1(estimate),
      se,
      df,
      interval: critical === null ? null : { low: estimate - critical * se, high: estimate + critical * se },
      pDifference: basis.pDifference,
      pEquivalence: basis.pEquivalence,
      needed: reasoned.verdict === 'cannot tell yet' ? needed : null,
    };
  });
}

/**
 * Critical value of the simultaneous intervals: Dunnett's where one factor carries the correlations, else Bonferroni's;
 * where degrees of freedom differ, on the fewest of them.
 */
function simultaneousCritical(
  tested: readonly TestedDifference[],
  alpha: number,
  covariance: (i: number, j: number) => number,
): number {
  const df = Math.min(...tested.map((difference) => difference.df));
  const correlations = tested.map((_, i) =>
    tested.map((__, j) => covariance(i, j) / Math.sqrt(covariance(i, i) * covariance(j, j))),
  );
  const { loadings, worstError } = commonFactor(correlations);
  return worstError <= WORST_FACTOR_ERROR
    ? maxTCritical(alpha, loadings, df)
    : tUpperQuantile(alpha / (2 * tested.length), df);
}
