import type { RiddenRun, RiderProgress } from '@loamledger/evidence';
import type { Run } from '../runs/stored-runs.js';
import { isBlindTo, plannedRunAnswer, type Plan } from './plan-answer.js';
import type { PlannedRunEntity } from './planned-run.entity.js';
import type { PlanProgressDto } from './planned-run.dto.js';

/** What one rider has of a plan: the runs that stand, in their order, and the stored runs behind them. */
export interface RiderPlace {
  readonly riderId: string;
  readonly standing: readonly PlannedRunEntity[];
  readonly stored: ReadonlyMap<string, Run>;
}

/** The arm of a planned run. */
export function armOf({ arms }: Plan, run: PlannedRunEntity): Plan['arms'][number] {
  const arm = arms.find(({ id }) => id === run.armId);
  if (!arm) throw new Error(`Planned run ${run.id} has no arm: the foreign key forbids it.`);
  return arm;
}

/** Runs that are still to be ridden, the next one first. */
export const restOf = ({ standing }: RiderPlace): PlannedRunEntity[] =>
  standing.filter(({ runId }) => runId === null);

/** Counted runs that were ridden, at the places where they really were: the order of riding may not be the planned. */
function riddenRuns(plan: Plan, { standing, stored }: RiderPlace): RiddenRun[] {
  return standing
    .flatMap((planned) => {
      const run = stored.get(planned.runId ?? '');
      return run ? [{ planned, run }] : [];
    })
    .sort((a, b) => byRiding(a.run, b.run))
    .map(({ planned, run }, i) => ({ planned, run, position: i + 1 }))
    .filter(({ planned }) => planned.kind === 'counted')
    .map(({ planned, run, position }) => ({
      arm: armOf(plan, planned).name,
      position,
      voided: run.voidedAt !== null,
    }));
}

function byRiding(a: Run, b: Run): number {
  if (a.sessionId === b.sessionId) return a.orderInSession - b.orderInSession;
  return a.sessionId < b.sessionId ? -1 : 1;
}

/** Where the rider is, as the order of a rest takes it. */
export const balancedProgress = (plan: Plan, place: RiderPlace): RiderProgress => ({
  rider: place.riderId,
  ridden: riddenRuns(plan, place),
  rest: countedRest(place).map((run) => armOf(plan, run).name),
});

/** Counted runs that are still to be ridden. */
export const countedRest = (place: RiderPlace): PlannedRunEntity[] =>
  restOf(place).filter(({ kind }) => kind === 'counted');

/** Whether what is still to ride is not what the runs that count leave open. */
export function isRestStale(plan: Plan, place: RiderPlace): boolean {
  const ridden = riddenRuns(plan, place).filter(({ voided }) => !voided);
  const rest = countedRest(place);
  return plan.row.made.letters.some(({ arm }) => {
    const done = ridden.filter((run) => run.arm === arm).length;
    const open = rest.filter((run) => armOf(plan, run).name === arm).length;
    return open !== Math.max(0, plan.row.runsAnArm - done);
  });
}

export function progressAnswer(
  scope: Parameters<typeof isBlindTo>[0],
  plan: Plan,
  place: RiderPlace,
): PlanProgressDto {
  const rest = restOf(place);
  const next = rest[0];
  return {
    riderId: place.riderId,
    next: next ? plannedRunAnswer({ planned: next, run: undefined }, armOf(plan, next).letter) : null,
    nextSetupId: next && !isBlindTo(scope, plan.row) ? armOf(plan, next).setupId : null,
    ridden: place.standing.length - rest.length,
    left: rest.length,
    voidedRunIds: [...place.stored.values()].filter(({ voidedAt }) => voidedAt !== null).map(({ id }) => id),
    restIsStale: isRestStale(plan, place),
  };
}
