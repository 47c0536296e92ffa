import type { ComparisonRun } from '@loamledger/evidence';
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
