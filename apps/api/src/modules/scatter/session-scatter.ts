import { compareSetUps, type ComparisonRun, type SessionVariance } from '@loamledger/evidence';
import type { Run } from '../runs/stored-runs.js';

/** A run as a comparison takes it, with the times of its sections. */
export interface SectionedRun extends ComparisonRun {
  readonly track: string;
  readonly sectionTimes: Run['sectionTimes'];
}

/** A run as a comparison takes it; its arm is the set-up ridden. */
export const comparisonRun = (run: Run): SectionedRun => ({
  track: run.trackId,
  sectionTimes: run.sectionTimes,
  arm: run.setupId,
  rider: run.riderId,
  session: run.sessionId,
  position: run.orderInSession,
  time: run.time,
  voided: run.voidedAt !== null,
});

/** Scatter between the runs of one rider in each session, set-ups and a trend over the session taken out. */
export function sessionVariances(runs: readonly ComparisonRun[]): SessionVariance[] {
  const groups = new Map<string, ComparisonRun[]>();
  for (const run of runs) {
    const key = `${run.session} ${run.rider}`;
    groups.set(key, [...(groups.get(key) ?? []), run]);
  }
  return [...groups.values()].flatMap((group) => {
    const variance = scatterOf(group);
    return variance && variance.df > 0 ? [variance] : [];
  });
}

const OF_ITS_OWN = 'of its own';
/** Of a comparison that nobody reads; it must be a margin, and plays no part in the scatter. */
const ANY_MARGIN = 0.01;

function scatterOf(runs: readonly ComparisonRun[]): SessionVariance | null {
  const [first] = runs;
  if (!first) return null;
  // One run on an arm of its own costs a row and a term, so the scatter is that of the others. As the one to compare
  // with it leaves nothing to test, and a session on a single set-up has its scatter too.
  return compareSetUps({
    runs: [{ ...first, arm: OF_ITS_OWN }, ...runs],
    current: OF_ITS_OWN,
    margin: ANY_MARGIN,
    history: [],
    look: null,
    trend: 'linear',
  }).session;
}
