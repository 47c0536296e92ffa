import type { ComparisonRun, Verdict } from '@loamledger/evidence';
import { planFor, scatterOf, verdictsOn } from './advice/verdicts.js';
import { stream } from './streams.js';
import { ALL_ALIKE, timesOf } from './truth/sessions.js';

/** A plan to be ridden again and again by simulated teams. */
export interface PlanCase {
  readonly riders: number;
  readonly runsAnArm: number;
  /** True differences of time of the tried set-ups as shares; below zero one is faster than the current one. */
  readonly differences: readonly number[];
  /** How far riders differ in what suits them, standard deviation of log time. */
  readonly suitsSd: number;
  /** Share of the runs that are void; there is no time to ride them again. */
  readonly voidShare: number;
  /** Timed sessions that the team has behind it. */
  readonly pastSessions: number;
}

/** What the tool said of one tried set-up over one plan. */
export interface ArmOutcome {
  /** Looked at once, in the end. */
  readonly atTheEnd: Verdict;
  /** Looked at after every block: what was said first that was not 'cannot tell yet', and ever said. */
  readonly first: Verdict;
  readonly ever: readonly Verdict[];
}

/** What the tool said over one plan, in the order of the true differences. */
export interface PlanOutcome {
  readonly arms: readonly ArmOutcome[];
}

/** Purposes of random numbers, apart from those of the set-up study. */
const PURPOSE = { past: 100, plan: 101 } as const;
const triedOf = (count: number): string[] => Array.from({ length: count }, (_, i) => `tried ${i + 1}`);
const PAST_PLAN = planFor(['rider 1'], triedOf(1), 3, 1);
const OPEN: readonly Verdict[] = ['cannot tell yet', 'no verdict'];

/** Lets a team ride a plan once. */
export function ridePlan(seed: number, index: number, plan: PlanCase): PlanOutcome {
  const riders = Array.from({ length: plan.riders }, (_, i) => `rider ${i + 1}`);
  const tried = triedOf(plan.differences.length);
  const history = scatterOf(pastRuns(seed, index, plan.pastSessions));
  const made = planFor(riders, tried, plan.runsAnArm, index);
  const truth = {
    differences: new Map(tried.map((arm, i) => [arm, Math.log1p(plan.differences[i] as number)])),
    suitsSd: plan.suitsSd,
    voidShare: plan.voidShare,
  };
  const all = timesOf(made.runs, truth, 'today', stream(seed, index, PURPOSE.plan));
  const counted = all.filter((_, i) => made.runs[i]?.kind === 'counted');
  const looks = Array.from({ length: plan.runsAnArm }, (_, block) =>
    verdictsOn(upToBlock(counted, block + 1), history, { number: block + 1, of: plan.runsAnArm }),
  );
  const end = verdictsOn(counted, history, null);
  return {
    arms: tried.map((arm) => {
      const ever = looks.map((verdicts) => verdicts.get(arm) ?? 'no verdict');
      return {
        atTheEnd: end.get(arm) ?? 'no verdict',
        first: ever.find((verdict) => !OPEN.includes(verdict)) ?? 'cannot tell yet',
        ever,
      };
    }),
  };
}

/** Each rider's runs, void ones too, until every arm was ridden `blocks` times. */
function upToBlock(counted: readonly ComparisonRun[], blocks: number): ComparisonRun[] {
  const riders = [...new Set(counted.map(({ rider }) => rider))];
  const arms = new Set(counted.map(({ arm }) => arm));
  return riders.flatMap((rider) => {
    const own = counted.filter((run) => run.rider === rider);
    const seen = new Map<string, number>();
    const whole = own.findIndex(({ arm }) => {
      seen.set(arm, (seen.get(arm) ?? 0) + 1);
      return seen.size === arms.size && Math.min(...seen.values()) >= blocks;
    });
    return own.slice(0, whole + 1);
  });
}

/** Sessions in which one rider tried two other set-ups that were alike. */
function pastRuns(seed: number, index: number, sessions: number): ComparisonRun[] {
  const random = stream(seed, index, PURPOSE.past);
  return Array.from({ length: sessions }, (_, i) =>
    timesOf(PAST_PLAN.runs, ALL_ALIKE, `session ${i + 1}`, random),
  ).flat();
}
