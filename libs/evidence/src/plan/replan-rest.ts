import { EvidenceInputError } from '../errors.js';
import { uniformNumbers } from '../numerics/random.js';
import { bestOrder, cheapestOrder } from './order-search.js';
import { restCost, restImbalance, type PlacedRun } from './rest-balance.js';
import type { PlannedRun, TestPlan } from './test-plan.js';

/** A run of the plan that was ridden; void ones keep their place and count for nothing. */
export interface RiddenRun {
  arm: string;
  position: number;
  voided: boolean;
}

/** Where a rider is in a plan. */
export interface RiderProgress {
  rider: string;
  /** Counted runs of the plan that were ridden, void ones among them, by place. */
  ridden: readonly RiddenRun[];
  /** Set-ups of the counted runs still to be ridden, in the order that stands. */
  rest: readonly string[];
}

/** What the rest of a plan is ordered by. */
type OrderedPlan = Pick<TestPlan, 'seed' | 'letters' | 'runs'>;

/**
 * New order of what one rider still has to ride after some runs, void ones among them; places in the session.
 *
 * Every void run is ridden again; the rest is ordered anew so that it balances what was ridden as well as can be: by the
 * rider's own runs where nobody else rides the plan (bestOrder), else by those of all riders (restCost), and then never
 * worse than the order that stands or the best one of the rider alone. `progress` has every rider of the plan. Throws
 * EvidenceInputError where it lacks the one asked for.
 */
export function replanRest(
  plan: OrderedPlan,
  rider: string,
  progress: readonly RiderProgress[],
): PlannedRun[] {
  const arms = plan.letters.map(({ arm }) => arm);
  const places = progress.map((entry) => placeOf(plan, arms, entry));
  const at = progress.findIndex((entry) => entry.rider === rider);
  const own = places[at];
  if (own === undefined) throw new EvidenceInputError('rider', rider, 'id', 'a rider of the plan');
  const order = orderOf(
    own,
    places.filter((_, i) => i !== at),
    arms.length,
    plan.seed,
  );
  return order.map((arm, i) => {
    const { arm: id, letter } = plan.letters[arm] as OrderedPlan['letters'][number];
    return { rider, position: own.free[i] as number, kind: 'counted', arm: id, letter };
  });
}

/** Where a rider is in a plan, in numbers of arms. */
interface Place {
  readonly ridden: readonly PlacedRun[];
  /** What is left in the order that stands; void runs that it has not taken up yet come in the end. */
  readonly rest: readonly number[];
  /** Places that the rest will be ridden at. */
  readonly free: readonly number[];
}

function placeOf(plan: OrderedPlan, arms: readonly string[], { rider, ridden, rest }: RiderProgress): Place {
  const planned = plan.runs.filter((run) => run.rider === rider);
  const left = arms.map(
    (arm) =>
      planned.filter((run) => run.kind === 'counted' && run.arm === arm).length -
      ridden.filter((run) => !run.voided && run.arm === arm).length,
  );
  const order: number[] = [];
  const take = (arm: number): void => {
    if ((left[arm] ?? 0) <= 0) return;
    left[arm] = (left[arm] as number) - 1;
    order.push(arm);
  };
  for (const arm of rest) take(arms.indexOf(arm));
  for (const [arm, count] of left.entries()) for (let i = 0; i < count; i += 1) take(arm);
  const warmUps = planned.filter((run) => run.kind === 'warm-up').length;
  const first = Math.max(warmUps, ...ridden.map((run) => run.position)) + 1;
  return {
    ridden: ridden.map(({ arm, position, voided }) => ({
      arm: arms.indexOf(arm),
      position,
      counts: !voided,
    })),
    rest: order,
    free: order.map((_, i) => first + i),
  };
}

function orderOf(own: Place, others: readonly Place[], arms: number, seed: number): number[] {
  const done = own.ridden.filter(({ counts }) => counts);
  const remaining = Array.from(
    { length: arms },
    (_, arm) => own.rest.filter((entry) => entry === arm).length,
  );
  const alone = bestOrder(remaining, own.free, seed, done);
  if (others.length === 0) return alone;
  const imbalance = restImbalance(arms, own.ridden, own.free, others.map(allRuns));
  return cheapestOrder([own.rest, alone], (order) => restCost(imbalance(order)), uniformNumbers(seed));
}

const allRuns = ({ ridden, rest, free }: Place): PlacedRun[] => [
  ...ridden,
  ...rest.map((arm, i) => ({ arm, position: free[i] as number, counts: true })),
];
