import { EvidenceInputError, requireBetween } from '../errors.js';
import type { OrderTrend } from '../linear/run-design.js';

/** Scatter between runs on the same set-up: standard deviation of log time and the degrees of freedom behind it. */
export interface RunScatter {
  sd: number;
  df: number;
}

/** What a test plan is made from. */
export interface TestPlanRequest {
  /** Ids of the set-ups, the current one first. */
  arms: readonly string[];
  riders: readonly string[];
  /** Runs of each set-up by each rider. */
  runsAnArm: number;
  /** Runs of each rider before the first counted one. */
  warmUps: number;
  /** Whole number; the plan is the same for the same seed. */
  seed: number;
  /** Riders see letters only until the plan is closed. */
  blind: boolean;
  trend: OrderTrend;
  /** Difference of time worth acting on, as a share (0.01 for 1 %). */
  margin: number;
  /** How often the times are looked at, evenly over the runs; 1: in the end. */
  looks: number;
  /** The team's own scatter between runs, or null where nothing is known yet. */
  scatter: RunScatter | null;
}

const FEWEST_ARMS = 2;
const MOST_ARMS = 8;
const MOST_RIDERS = 20;
const MOST_RUNS_AN_ARM = 20;
const MOST_WARM_UPS = 10;
const LARGEST_SEED = 2 ** 32 - 1;
/** Largest margin that is still a small change of time; beyond it per cent and log differ visibly. */
const LARGEST_MARGIN = 0.2;

/** Throws EvidenceInputError for numbers outside what a team can ride. */
export function requirePlan(request: TestPlanRequest): void {
  requireBetween('arms', request.arms.length, 'set-ups', FEWEST_ARMS, MOST_ARMS);
  requireBetween('riders', request.riders.length, 'riders', 1, MOST_RIDERS);
  requireBetween('runsAnArm', request.runsAnArm, 'runs', 1, MOST_RUNS_AN_ARM);
  requireBetween('warmUps', request.warmUps, 'runs', 0, MOST_WARM_UPS);
  requireBetween('looks', request.looks, 'looks', 1, MOST_RUNS_AN_ARM);
  requireBetween('seed', request.seed, 'whole number', 0, LARGEST_SEED);
  requireBetween('margin', request.margin, 'share of time', Number.MIN_VALUE, LARGEST_MARGIN);
  for (const name of ['arms', 'riders'] as const) {
    if (new Set(request[name]).size !== request[name].length) {
      throw new EvidenceInputError(name, request[name].join(', '), 'ids', 'all different');
    }
  }
  for (const name of ['runsAnArm', 'warmUps', 'looks', 'seed'] as const) {
    if (!Number.isInteger(request[name]))
      throw new EvidenceInputError(name, request[name], 'count', 'whole numbers');
  }
}
