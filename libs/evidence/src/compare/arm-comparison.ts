import type { ComparisonRun } from './comparison-request.js';
import type { RunsStillNeeded } from './runs-needed.js';
import type { ReasonedVerdict } from './verdict.js';

/** One set-up against the current one; differences are of log time, negative is faster. */
export interface ArmComparison extends ReasonedVerdict {
  arm: string;
  timedRuns: number;
  difference: number | null;
  /** exp(difference) − 1. */
  share: number | null;
  se: number | null;
  df: number | null;
  /** Simultaneous interval over all set-ups compared, at 1 − alpha. */
  interval: { low: number; high: number } | null;
  /** Adjusted after Holm. */
  pDifference: number | null;
  pEquivalence: number | null;
  needed: RunsStillNeeded | null;
}

/** Number of runs of one set-up. */
export const countOf = (runs: readonly ComparisonRun[], arm: string): number =>
  runs.filter((run) => run.arm === arm).length;

/** The entry of a set-up that no test is possible for. */
export function withoutVerdict(
  arm: string,
  timedRuns: number,
  sentence: string,
  difference?: number,
): ArmComparison {
  return {
    arm,
    timedRuns,
    difference: difference ?? null,
    share: difference === undefined ? null : Math.expm1(difference),
    se: null,
    df: null,
    interval: null,
    pDifference: null,
    pEquivalence: null,
    verdict: 'no verdict',
    sentence,
    needed: null,
  };
}
