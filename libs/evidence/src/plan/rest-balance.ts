import {
  addedUp,
  placeSums,
  sessionSums,
  spreadOf,
  trendCost,
  trendTerms,
  type OrderImbalance,
  type PlaceSums,
} from './place-balance.js';

/** A run as the balance sees it: arm number, place in its rider's session, and whether its time counts. */
export interface PlacedRun {
  readonly arm: number;
  readonly position: number;
  readonly counts: boolean;
}

/** How far the runs of all riders are from being balanced; 0 is perfect. */
export interface RestImbalance {
  /** Of the rider whose rest is ordered: riders tire each in their own way. */
  readonly own: OrderImbalance;
  /** Of all riders together, places from the middle of each rider's session. */
  readonly all: OrderImbalance;
  /** Spread of how often each arm comes right behind each other one, over all riders, in squared shares of an arm's runs. */
  readonly carryOver: number;
}

/** What one set-up leaves behind for the next run is as much time as the day's trend makes in so many runs (judgement). */
const CARRY_OVER_IN_RUNS = 2;

/**
 * What the search for a rest makes smallest, in runs to the fourth.
 *
 * A trend of g a run puts g·(mean place) on an arm, what arms leave behind, of size c, c·(share of its runs behind
 * each): with c/g in runs both are squared runs, and are added up.
 */
export const restCost = ({ own, all, carryOver }: RestImbalance): number =>
  trendCost({
    linear: own.linear + all.linear + CARRY_OVER_IN_RUNS ** 2 * carryOver,
    quadratic: own.quadratic + all.quadratic,
  });

/**
 * The imbalance of all riders' runs by the order in which one of them rides the rest.
 *
 * `ridden` are that rider's runs so far and `places` those of the rest; `others` has all runs of each other rider, ridden
 * and to be ridden; all by place, arms numbered from 0 and below `arms`. A void run does not count, and leaves something
 * behind for the next all the same.
 */
export function restImbalance(
  arms: number,
  ridden: readonly PlacedRun[],
  places: readonly number[],
  others: readonly (readonly PlacedRun[])[],
): (order: readonly number[]) => RestImbalance {
  const ownSums = sessionSums(
    arms,
    ridden.filter(({ counts }) => counts),
    places,
  );
  const otherSums = others.map((runs) => {
    const counted = runs.filter(({ counts }) => counts);
    return sessionSums(arms, counted, [])([]);
  });
  const fixedSums = otherSums.reduce(addedUp, placeSums(arms, [], trendTerms([])));
  const fixedBehind = new Array<number>(arms * arms).fill(0);
  for (const runs of [ridden, ...others]) countBehind(fixedBehind, arms, runs);
  const last = ridden.at(-1);
  const before = last && last.position + 1 === places[0] ? last.arm : undefined;
  return (order) => {
    const own = ownSums(order);
    const all = addedUp(own, fixedSums);
    const behind = [...fixedBehind];
    for (let i = 0; i < order.length; i += 1) {
      const arm = i === 0 ? before : order[i - 1];
      if (arm !== undefined) countPair(behind, arms, arm, order[i] as number);
    }
    return { own: spreadOf(own), all: spreadOf(all), carryOver: spreadBehind(behind, arms, all) };
  };
}

/** Adds how often each arm's counted runs come right behind each other arm, at `behind[before · arms + arm]`. */
function countBehind(behind: number[], arms: number, runs: readonly PlacedRun[]): void {
  for (const [i, { arm, position, counts }] of runs.entries()) {
    const before = runs[i - 1];
    if (counts && before?.position === position - 1) countPair(behind, arms, before.arm, arm);
  }
}

function countPair(behind: number[], arms: number, before: number, arm: number): void {
  if (before === arm) return;
  const at = before * arms + arm;
  behind[at] = (behind[at] as number) + 1;
}

function spreadBehind(behind: readonly number[], arms: number, sums: readonly PlaceSums[]): number {
  const runsAnArm = sums.reduce((sum, { runs }) => sum + runs, 0) / arms;
  const mean = behind.reduce((sum, times) => sum + times, 0) / (arms * (arms - 1));
  let spread = 0;
  for (let before = 0; before < arms; before += 1) {
    for (let arm = 0; arm < arms; arm += 1) {
      if (before !== arm) spread += (((behind[before * arms + arm] as number) - mean) / runsAnArm) ** 2;
    }
  }
  return spread;
}
