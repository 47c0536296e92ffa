import { EvidenceInputError, requireBetween } from '../errors.js';
import type { OrderTrend } from '../linear/run-design.js';
import { requireLook, type Look } from './look-levels.js';
import type { SessionVariance } from './moderated-variance.js';

/** One ridden run of a comparison. */
export interface ComparisonRun {
  arm: string;
  rider: string;
  session: string;
  /** Place in the session, from 1; a void run keeps its place. */
  position: number;
  /** s; null where no time was taken. */
  time: number | null;
  voided: boolean;
}

/** What a comparison is made from. */
export interface ComparisonRequest {
  runs: readonly ComparisonRun[];
  /** The set-up that the others are compared with. */
  current: string;
  /** Difference of time worth acting on, as a share (0.01 for 1 %). */
  margin: number;
  /** Residual variances of the team's past sessions with the same timing. */
  history: readonly SessionVariance[];
  /** The look at a plan that is looked at while it is ridden; null for a single look at the end. */
  look: Look | null;
  /** Trend over the session that is taken out. */
  trend: OrderTrend;
}

/** Largest margin that is still a small change of time; beyond it per cent and log differ visibly. */
const LARGEST_MARGIN = 0.2;

/** Throws EvidenceInputError for times, places, margin or look that cannot be. */
export function requireComparison(request: ComparisonRequest): void {
  requireBetween('margin', request.margin, 'share of time', Number.MIN_VALUE, LARGEST_MARGIN);
  if (request.look !== null) requireLook(request.look);
  requireRuns(request.runs);
}

/** Throws EvidenceInputError for times and places that cannot be. */
export function requireRuns(runs: readonly ComparisonRun[]): void {
  for (const [i, run] of runs.entries()) {
    if (run.time !== null && !(run.time > 0 && Number.isFinite(run.time))) {
      throw new EvidenceInputError(`runs[${i}].time`, run.time, 's', 'a finite number > 0, or null');
    }
    if (!(Number.isInteger(run.position) && run.position >= 1)) {
      throw new EvidenceInputError(`runs[${i}].position`, run.position, 'place', 'whole numbers from 1');
    }
  }
}
