import { countOf, withoutVerdict, type ArmComparison } from './arm-comparison.js';
import type { ComparisonRequest } from './comparison-request.js';
import type { ModeratedVariance } from './moderated-variance.js';
import { noTestReasons } from './no-test.js';
import { runsStillNeeded } from './runs-needed.js';
import { testArms, type Levels } from './test-arms.js';
import type { TimedRun, TimeModel } from './time-model.js';

/**
 * Verdicts on the set-ups by the scatter between runs: for these riders only. `whole`: whether with intervals and the runs
 * still needed, which cost more than all else.
 */
export function judgeTheseRiders(
  request: ComparisonRequest,
  timed: readonly TimedRun[],
  model: TimeModel,
  variance: ModeratedVariance | null,
  others: readonly string[],
  levels: Levels,
  whole: boolean,
): ArmComparison[] {
  const whyNot = noTestReasons(request, timed, model, others, variance);
  const tested = model.differences.filter((difference) => !whyNot.has(difference.arm));
  const judged = variance === null ? [] : test(request, timed, model, variance, tested, levels, whole);
  return others.map(
    (arm) =>
      judged.find((entry) => entry.arm === arm) ??
      withoutVerdict(
        arm,
        countOf(timed, arm),
        whyNot.get(arm) ?? '',
        model.differences.find((d) => d.arm === arm)?.estimate,
      ),
  );
}

function test(
  request: ComparisonRequest,
  timed: readonly TimedRun[],
  model: TimeModel,
  variance: ModeratedVariance,
  tested: TimeModel['differences'],
  levels: Levels,
  whole: boolean,
): ArmComparison[] {
  const margin = Math.log1p(request.margin);
  const borrowed = variance.source !== 'this session';
  const at = tested.map((difference) => model.differences.indexOf(difference));
  const differences = tested.map(({ arm, estimate, unscaledVariance }) => ({
    arm,
    estimate,
    se: Math.sqrt(variance.variance * unscaledVariance),
    df: variance.df,
    needed: whole
      ? runsStillNeeded({
          variance,
          unscaledVariance,
          runs: { arm: countOf(timed, arm), current: countOf(timed, request.current) },
          arms: tested.length + 1,
          comparisons: tested.length,
          alpha: levels.end,
          borrowed,
          margin,
        })
      : null,
  }));
  return testArms(timed, differences, {
    alpha: levels.now,
    margin,
    borrowed,
    whom: 'these riders',
    covariance: whole ? (i, j) => model.covariance[at[i] as number]?.[at[j] as number] as number : null,
  });
}
