import type { Plan, PlannedRun, PlanProgress, PlanSummary } from '../api/plans.js';

/** A run in a rider's order, and what became of it. */
export interface OrderedRun {
  readonly run: PlannedRun;
  readonly state: 'done' | 'void' | 'next' | 'open';
}

/** The whole order of one rider. */
export function orderOf(plan: Pick<Plan, 'runs' | 'closedAt'>, riderId: string): OrderedRun[] {
  const own = plan.runs.filter((run) => run.riderId === riderId);
  const next = plan.closedAt === null ? own.find(({ runId }) => runId === null) : undefined;
  return own.map((run) => {
    if (run.runId !== null) return { run, state: run.voidReason === null ? 'done' : 'void' };
    return { run, state: run === next ? 'next' : 'open' };
  });
}

/** What a rider rides next, once the runs at `waiting` places are sent; undefined where every run is ridden. */
export const nextAfter = (
  plan: Pick<Plan, 'runs' | 'closedAt'>,
  riderId: string,
  waiting: readonly number[],
): PlannedRun | undefined =>
  orderOf(plan, riderId).find(
    ({ run, state }) => (state === 'next' || state === 'open') && !waiting.includes(run.position),
  )?.run;

/** A place that a run on this device is for, and whether the API has refused that run. */
export interface WaitingPlace {
  readonly position: number;
  readonly isRefused: boolean;
}

/**
 * The places that count as ridden though the plan does not say so yet, after a look at the device: a run that waits takes
 * its place, a refused one gives it back. The same list where nothing changes.
 */
export function savedAfter(saved: readonly number[], places: readonly WaitingPlace[]): readonly number[] {
  const refused = places.filter(({ isRefused }) => isRefused).map(({ position }) => position);
  const waiting = places.filter(({ isRefused }) => !isRefused).map(({ position }) => position);
  const kept = saved.filter((position) => waiting.includes(position) || !refused.includes(position));
  const added = waiting.filter((position) => !saved.includes(position));
  return kept.length === saved.length && added.length === 0 ? saved : [...kept, ...new Set(added)];
}

/** Counted runs that count, and all that are to. */
export function progressOf(riders: PlanSummary['riders']): { ridden: number; all: number } {
  const ridden = riders.reduce((sum, rider) => sum + rider.ridden, 0);
  return { ridden, all: riders.reduce((sum, { left }) => sum + left, ridden) };
}

/** The rider to look at: the one that is asked for, else the first who has a run to ride. */
export const riderToRide = (
  progress: readonly PlanProgress[],
  wanted: string | undefined,
): PlanProgress | undefined =>
  progress.find(({ riderId }) => riderId === wanted) ??
  progress.find(({ next }) => next !== null) ??
  progress[0];

/** The set-up of the arm of a letter on a bike; null where it is hidden. */
export const setupOfArm = (plan: Pick<Plan, 'arms'>, letter: string, bikeId: string): string | null =>
  plan.arms.find((arm) => arm.letter === letter)?.setups.find((setup) => setup.bikeId === bikeId)?.setupId ??
  null;
