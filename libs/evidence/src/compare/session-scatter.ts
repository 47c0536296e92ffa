import { leastSquares } from '../linear/least-squares.js';
import { runDesign } from '../linear/run-design.js';
import { requireRuns, type ComparisonRun } from './comparison-request.js';
import type { SessionVariance } from './moderated-variance.js';
import type { TimedRun } from './time-model.js';

/** Standard deviation of log time below which equal times come from the timer, not from the rider. */
const TIMER_RESOLUTION = 1e-9;

/** A residual variance as a session's, (log time)²; 0 where the timer reads too coarsely to show any. */
export const sessionVariance = (variance: number, residualDf: number): SessionVariance => ({
  variance: Math.sqrt(variance) > TIMER_RESOLUTION ? variance : 0,
  df: Math.max(0, residualDf),
});

/**
 * Scatter between the runs of each rider in each session, as variances of log time.
 *
 * Residual variance of log time = arm + linear trend over the session, ordinary least squares, one fit a rider and
 * session; a session on a single arm has its scatter too. Void and untimed runs are left out; sessions without degrees
 * of freedom are not listed. Throws EvidenceInputError for times and places that cannot be.
 */
export function sessionVariances(runs: readonly ComparisonRun[]): SessionVariance[] {
  requireRuns(runs);
  const sessions = new Map<string, TimedRun[]>();
  for (const run of runs) {
    if (run.voided || run.time === null) continue;
    const key = `${run.rider}\u0000${run.session}`;
    sessions.set(key, [...(sessions.get(key) ?? []), { ...run, time: run.time }]);
  }
  return [...sessions.values()].map(scatterOf).filter(({ df }) => df > 0);
}

function scatterOf(runs: readonly TimedRun[]): SessionVariance {
  const arms = [...new Set(runs.map((run) => run.arm))];
  const rows = runs.map((run) => ({ arm: arms.indexOf(run.arm), block: 0, position: run.position }));
  const fit = leastSquares(
    runDesign(rows, 'linear').x,
    runs.map((run) => Math.log(run.time)),
  );
  return sessionVariance(fit.residualDf > 0 ? fit.residualSumOfSquares / fit.residualDf : 0, fit.residualDf);
}

/**
 * Scatter between runs pooled over sessions, as a standard deviation of log time: √(Σ d·s² / Σ d) on Σ d degrees of
 * freedom. Null where no session has any, or the timer showed none.
 */
export function pooledScatter(sessions: readonly SessionVariance[]): { sd: number; df: number } | null {
  const df = sessions.reduce((sum, session) => sum + session.df, 0);
  const squares = sessions.reduce((sum, session) => sum + session.df * session.variance, 0);
  return df > 0 && squares > 0 ? { sd: Math.sqrt(squares / df), df } : null;
}
