import {
  makeTestPlan,
  pooledScatter,
  replanRest,
  sessionVariances,
  type ComparisonRun,
  type PlannedRun,
  type RiderProgress,
  type RunScatter,
  type TestPlan,
  type TestPlanRequest,
} from '@loamledger/evidence';
import type { Computation } from '../../platform/compute/compute-thread.js';
import type { Looks } from './looks.js';

/** A plan that is to be made: with its number of runs, or with the difference that it is to tell. */
export interface PlanWish extends Omit<TestPlanRequest, 'runsAnArm' | 'looks' | 'scatter'> {
  readonly looks: Looks;
  readonly size: { readonly runsAnArm: number } | { readonly differenceToTell: number };
  readonly pastRuns: readonly ComparisonRun[];
}

/** The plan, or why the number of runs that the difference asks for cannot be told or ridden. */
export type MadePlan =
  | { readonly plan: TestPlan; readonly runsAnArm: number; readonly scatter: RunScatter | null }
  | { readonly refused: 'scatter unknown' }
  | { readonly refused: 'too many runs'; readonly runsAnArm: number | null };

/** Counted runs that one rider rides in a plan at most: two long days (judgement). */
export const MOST_RUNS_OF_A_RIDER = 40;
/** Fewer give no scatter to judge a difference by. */
const FEWEST_RUNS_AN_ARM = 2;

/** @public The plan that was asked for, or why there is none. The computing thread finds it by its name. */
export function makePlan({ size, pastRuns, looks, ...wish }: PlanWish): MadePlan {
  const scatter = pooledScatter(sessionVariances(pastRuns));
  const most = Math.floor(MOST_RUNS_OF_A_RIDER / wish.arms.length);
  const make = (runsAnArm: number, more: Partial<TestPlanRequest> = {}): TestPlan =>
    makeTestPlan({ ...wish, runsAnArm, looks: looksOf(looks, runsAnArm), scatter, ...more });
  if ('runsAnArm' in size) {
    const { runsAnArm } = size;
    if (runsAnArm > most) return { refused: 'too many runs', runsAnArm };
    return { plan: make(runsAnArm), runsAnArm, scatter };
  }
  if (scatter === null) return { refused: 'scatter unknown' };
  let runsAnArm = FEWEST_RUNS_AN_ARM;
  // More runs bring more looks, and more looks ask for some runs more: upwards until both agree.
  for (;;) {
    const more = { margin: size.differenceToTell, looks: looksOf(looks, runsAnArm) };
    const needed = make(FEWEST_RUNS_AN_ARM, more).statement.runsForDifference;
    const each = needed === null ? null : Math.ceil(needed / wish.riders.length);
    if (each === null || each > most) return { refused: 'too many runs', runsAnArm: each };
    if (each <= runsAnArm) return { plan: make(runsAnArm), runsAnArm, scatter };
    runsAnArm = each;
  }
}

/** Each rider on each arm once more is a block. */
const looksOf = (looks: Looks, blocks: number): number => (looks === 'at the end' ? 1 : blocks);

/** Whose rest of a plan is to be ordered, and where all its riders are. */
export interface RestWish {
  readonly plan: TestPlan;
  readonly rider: string;
  readonly progress: readonly RiderProgress[];
}

/** @public The order of what is left to ride. The computing thread finds it by its name. */
export const orderRest = ({ plan, rider, progress }: RestWish): PlannedRun[] =>
  replanRest(plan, rider, progress);

const inThread = <Input, Output>(run: (input: Input) => Output): Computation<Input, Output> => ({
  module: new URL(import.meta.url),
  name: run.name,
});

export const MAKE_PLAN = inThread(makePlan);
export const ORDER_REST = inThread(orderRest);
