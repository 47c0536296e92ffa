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
import { CURRENT, MARGIN } from '../contract.js';

/** Runs that go before the counted ones. */
const WARM_UPS = 2;

/** The plan that the tool makes to try set-ups against the current one. */
export function planFor(
  riders: readonly string[],
  tried: readonly string[],
  runsAnArm: number,
  seed: number,
): TestPlan {
  return makeTestPlan({
    arms: [CURRENT, ...tried],
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

/** What the tool says of each tried set-up that was ridden, by its name; `look` is null for a single look in the end. */
export function verdictsOn(
  runs: readonly ComparisonRun[],
  history: readonly SessionVariance[],
  look: ComparisonRequest['look'],
): ReadonlyMap<string, Verdict> {
  const { arms } = compareSetUps({ runs, current: CURRENT, margin: MARGIN, history, look, trend: 'linear' });
  return new Map(arms.map(({ arm, verdict }) => [arm, verdict]));
}
