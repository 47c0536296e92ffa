import { tUpperQuantile } from '../numerics/distributions.js';
import { countOf, type ArmComparison } from './arm-comparison.js';
import type { ComparisonRequest } from './comparison-request.js';
import { commonFactor, maxTCritical } from './max-t.js';
import type { ModeratedVariance } from './moderated-variance.js';
import { runsStillNeeded } from './runs-needed.js';
import { differenceTest, equivalenceTest, holmAdjusted } from './tests.js';
import type { ArmDifference, TimedRun, TimeModel } from './time-model.js';
import { verdictOf } from './verdict.js';

/** Correlations that one common factor misses by more get Bonferroni's wider interval instead. */
const WORST_FACTOR_ERROR = 0.05;

/** Error rates: of this look, and of the last one that was agreed. */
export interface Levels {
  readonly now: number;
  readonly end: number;
}

/** Tests of all set-ups that can be tested against the current one, with verdicts. */
export function testArms(
  request: ComparisonRequest,
  timed: readonly TimedRun[],
  model: TimeModel,
  tested: readonly ArmDifference[],
  variance: ModeratedVariance,
  { now: alpha, end }: Levels,
): ArmComparison[] {
  if (tested.length === 0) return [];
  const margin = Math.log1p(request.margin);
  const { df } = variance;
  const ses = tested.map((difference) => Math.sqrt(variance.variance * difference.unscaledVariance));
  const se = (i: number): number => ses[i] as number;
  const pDifference = holmAdjusted(tested.map(({ estimate }, i) => differenceTest(estimate, se(i), df)));
  const pEquivalence = holmAdjusted(
    tested.map(({ estimate }, i) => equivalenceTest(estimate, se(i), df, margin).p),
  );
  const critical = simultaneousCritical(model, tested, df, alpha);
  return tested.map((difference, i) => {
    const { arm, estimate } = difference;
    const needed =
      model.unit === 'rider means'
        ? null
        : runsStillNeeded({
            variance,
            unscaledVariance: difference.unscaledVariance,
            runs: { arm: countOf(timed, arm), current: countOf(timed, request.current) },
            arms: tested.length + 1,
            comparisons: tested.length,
            alpha: end,
            margin,
          });
    const basis = {
      estimate,
      se: se(i),
      df,
      pDifference: pDifference[i] as number,
      pEquivalence: pEquivalence[i] as number,
      alpha,
      margin,
      borrowed: variance.source !== 'this session',
    };
    const reasoned = verdictOf(basis, needed);
    return {
      ...reasoned,
      arm,
      timedRuns: countOf(timed, arm),
      difference: estimate,
      share: Math.expm1(estimate),
      se: se(i),
      df,
      interval: { low: estimate - critical * se(i), high: estimate + critical * se(i) },
      pDifference: basis.pDifference,
      pEquivalence: basis.pEquivalence,
      needed: reasoned.verdict === 'cannot tell yet' ? needed : null,
    };
  });
}

/** Critical value of the simultaneous intervals: Dunnett's where one factor carries the correlations, else Bonferroni's. */
function simultaneousCritical(
  model: TimeModel,
  tested: readonly ArmDifference[],
  df: number,
  alpha: number,
): number {
  const at = tested.map((difference) => model.differences.indexOf(difference));
  const covariance = (i: number, j: number): number =>
    model.covariance[at[i] as number]?.[at[j] as number] as number;
  const correlations = at.map((_, i) =>
    at.map((__, j) => covariance(i, j) / Math.sqrt(covariance(i, i) * covariance(j, j))),
  );
  const { loadings, worstError } = commonFactor(correlations);
  return worstError <= WORST_FACTOR_ERROR
    ? maxTCritical(alpha, loadings, df)
    : tUpperQuantile(alpha / (2 * tested.length), df);
}
