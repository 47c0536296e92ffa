import {
  makeTestPlan,
  pooledScatter,
  replanRest,
  sessionVariances,
  type ComparisonRun,
  type PlannedRun,
  type RiddenRun,
  type RunScatter,
  type TestPlan,
  type TestPlanRequest,
} from '@loamledger/evidence';
import type { Computation } from '../../platform/compute/compute-thread.js';

/** A plan that is to be made: with its number of runs, or with the difference that it is to tell. */
export interface PlanWish extends Omit<TestPlanRequest, 'runsAnArm' | 'scatter'> {
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
export function makePlan({ size, pastRuns, ...wish }: PlanWish): MadePlan {
  const scatter = pooledScatter(sessionVariances(pastRuns));
  const most = Math.floor(MOST_RUNS_OF_A_RIDER / wish.arms.length);
  if ('runsAnArm' in size) {
    const { runsAnArm } = size;
    if (runsAnArm > most) return { refused: 'too many runs', runsAnArm };
    return { plan: makeTestPlan({ ...wish, runsAnArm, scatter }), runsAnArm, scatter };
  }
  if (scatter === null) return { refused: 'scatter unknown' };
  const trial = { ...wish, runsAnArm: FEWEST_RUNS_AN_ARM, margin: size.differenceToTell, scatter };
  const needed = makeTestPlan(trial).statement.runsForDifference;
  const runsAnArm =
    needed === null ? null : Math.max(FEWEST_RUNS_AN_ARM, Math.ceil(needed / wish.riders.length));
  if (runsAnArm === null || runsAnArm > most) return { refused: 'too many runs', runsAnArm };
  return { plan: makeTestPlan({ ...wish, runsAnArm, scatter }), runsAnArm, scatter };
}

/** What one rider has ridden of a plan. */
export interface RestWish {
  readonly plan: TestPlan;
  readonly rider: string;
  readonly ridden: readonly RiddenRun[];
}

/** @public The order of what is left to ride. The computing thread finds it by its name. */
export const orderRest = ({ plan, rider, ridden }: RestWish): PlannedRun[] =>
  replanRest(
    plan,
    rider,
    ridden,
    plan.letters.map(({ arm }) => arm),
  );

const inThread = <Input, Output>(run: (input: Input) => Output): Computation<Input, Output> => ({
  module: new URL(import.meta.url),
  name: run.name,
});

export const MAKE_PLAN = inThread(makePlan);
export const ORDER_REST = inThread(orderRest);
