import { shuffled, uniformNumbers } from '../numerics/random.js';
import { bestOrder } from './order-search.js';
import { scoreRuns, type OrderScore } from './order-score.js';
import { requirePlan, type TestPlanRequest } from './plan-request.js';
import { statementOf, type PlanStatement } from './plan-statement.js';
import { riderOrders } from './rider-orders.js';

/** One run of a plan. */
export interface PlannedRun {
  rider: string;
  /** Place in the rider's session, from 1, warm-ups included. */
  position: number;
  kind: 'warm-up' | 'counted';
  arm: string;
  letter: string;
}

/** A plan as plain JSON. */
export interface TestPlan {
  seed: number;
  blind: boolean;
  letters: { arm: string; letter: string }[];
  runs: PlannedRun[];
  score: OrderScore;
  /** Whether every set-up comes right behind every other equally often, over all riders. */
  carryOverBalanced: boolean;
  statement: PlanStatement;
}

const CARRIED_OVER =
  'The set-ups do not follow each other equally often: what one leaves behind for the next does not cancel.';

/**
 * Plan of runs that tells set-ups apart as precisely as it can: positions in runs, variances relative to those of an
 * ideal order.
 *
 * One rider: the best order found against a linear, then a quadratic trend (cox1951, daniel1966). Several riders:
 * Williams rows (williams1949), each followed by its mirror image, the most precise of many assignments to riders. Letters
 * and orders are drawn with the seed.
 * Throws EvidenceInputError for numbers outside what a team can ride.
 */
export function makeTestPlan(request: TestPlanRequest): TestPlan {
  requirePlan(request);
  const { arms, riders, seed, warmUps, blind } = request;
  const uniform = uniformNumbers(seed);
  const alphabet = shuffled(
    arms.map((_, i) => String.fromCharCode('A'.charCodeAt(0) + i)),
    uniform,
  );
  const letters = arms.map((arm, i) => ({ arm, letter: alphabet[i] as string }));
  const orders = ordersOf(request, uniform);
  const runs = riders.flatMap((rider, r) => {
    const order = orders[r] as number[];
    // Warm-ups on the first set-up of the order, so that its first counted run is no change of set-up.
    const all = [...new Array<number>(warmUps).fill(order[0] as number), ...order];
    return all.map((arm, i): PlannedRun => ({
      rider,
      position: i + 1,
      kind: i < warmUps ? 'warm-up' : 'counted',
      arm: arms[arm] as string,
      letter: alphabet[arm] as string,
    }));
  });
  const score = scoreRuns(countedRuns(runs, arms), request.trend);
  const carryOverBalanced = followsEqually(runs, arms);
  const statement = statementOf(request, score);
  return {
    seed,
    blind,
    letters,
    runs,
    score,
    carryOverBalanced,
    statement:
      riders.length === 1 || carryOverBalanced
        ? statement
        : { ...statement, sentences: [...statement.sentences, CARRIED_OVER] },
  };
}

function followsEqually(runs: readonly PlannedRun[], arms: readonly string[]): boolean {
  const counted = runs.filter((run) => run.kind === 'counted');
  const times = new Map(
    arms.flatMap((first) => arms.filter((arm) => arm !== first).map((arm) => [`${first}\u0000${arm}`, 0])),
  );
  for (const [i, run] of counted.entries()) {
    const before = counted[i - 1];
    if (before?.rider !== run.rider || before.arm === run.arm) continue;
    const pair = `${before.arm}\u0000${run.arm}`;
    times.set(pair, (times.get(pair) ?? 0) + 1);
  }
  return new Set(times.values()).size === 1;
}

function countedRuns(runs: readonly PlannedRun[], arms: readonly string[]) {
  const riders = [...new Set(runs.map((run) => run.rider))];
  return runs
    .filter((run) => run.kind === 'counted')
    .map((run) => ({ arm: arms.indexOf(run.arm), block: riders.indexOf(run.rider), position: run.position }));
}

/** Orders of arm numbers, one a rider. */
function ordersOf(
  { arms, riders, runsAnArm, trend, seed, warmUps }: TestPlanRequest,
  uniform: () => number,
): number[][] {
  const total = arms.length * runsAnArm;
  if (riders.length === 1) {
    const places = Array.from({ length: total }, (_, i) => warmUps + i + 1);
    return [
      bestOrder(
        arms.map(() => runsAnArm),
        places,
        seed,
      ),
    ];
  }
  return riderOrders({ arms: arms.length, riders: riders.length, runsAnArm, trend, seed }, uniform);
}
