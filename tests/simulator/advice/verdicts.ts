import {
  compareSetUps,
  makeTestPlan,
  sessionVariances,
  type ComparisonRequest,
  type ComparisonRun,
  type SessionVariance,
  type TestPlan,
  type Verdict,
} from '@loamledger/evidence';

/** Arms of every plan here. */
const ARMS = ['current', 'tried'] as const;
/** A difference of time worth acting on: what the tool takes where nothing is said. */
const MARGIN = 0.01;
/** Runs that go before the counted ones. */
const WARM_UPS = 2;

/** The plan that the tool makes. */
export function planFor(riders: readonly string[], runsAnArm: number, seed: number): TestPlan {
  return makeTestPlan({
    arms: ARMS,
    riders,
    runsAnArm,
    warmUps: WARM_UPS,
    seed,
    blind: false,
    trend: 'linear',
    margin: MARGIN,
    looks: 1,
    scatter: null,
  });
}

/** The team's own scatter between runs, from the times of its past sessions. */
export const scatterOf = (pastRuns: readonly ComparisonRun[]): SessionVariance[] =>
  sessionVariances(pastRuns);

/** What the tool says of the tried set-up; `look` is null for a single look in the end. */
export function verdictOn(
  runs: readonly ComparisonRun[],
  history: readonly SessionVariance[],
  look: ComparisonRequest['look'],
): Verdict {
  const { arms } = compareSetUps({ runs, current: ARMS[0], margin: MARGIN, history, look, trend: 'linear' });
  return arms[0]?.verdict ?? 'no verdict';
}
