import type { ComparisonRun, Verdict } from '@loamledger/evidence';
import { planFor, scatterOf, verdictOn } from './advice/verdicts.js';
import { stream } from './streams.js';
import { timesOf } from './truth/sessions.js';

/** A plan to be ridden again and again by simulated teams. */
export interface PlanCase {
  readonly riders: number;
  readonly runsAnArm: number;
  /** True difference of time as a share; below zero the tried set-up is faster. */
  readonly difference: number;
  /** Timed sessions that the team has behind it. */
  readonly pastSessions: number;
}

/** What the tool said over one plan. */
export interface PlanOutcome {
  /** Looked at once, in the end. */
  readonly atTheEnd: Verdict;
  /** Looked at after every block: what was said first that was not 'cannot tell yet', and ever said. */
  readonly first: Verdict;
  readonly ever: readonly Verdict[];
}

/** Purposes of random numbers, apart from those of the set-up study. */
const PURPOSE = { past: 100, plan: 101 } as const;
const PAST_PLAN = planFor(['rider 1'], 3, 1);
const OPEN: readonly Verdict[] = ['cannot tell yet', 'no verdict'];

/** Lets a team ride a plan once. */
export function ridePlan(seed: number, index: number, plan: PlanCase): PlanOutcome {
  const riders = Array.from({ length: plan.riders }, (_, i) => `rider ${i + 1}`);
  const history = scatterOf(pastRuns(seed, index, plan.pastSessions));
  const made = planFor(riders, plan.runsAnArm, index);
  const truth = { difference: Math.log1p(plan.difference) };
  const all = timesOf(made.runs, truth, 'today', stream(seed, index, PURPOSE.plan));
  const counted = all.filter((_, i) => made.runs[i]?.kind === 'counted');
  const ever = Array.from({ length: plan.runsAnArm }, (_, block) =>
    verdictOn(upToBlock(counted, block + 1), history, { number: block + 1, of: plan.runsAnArm }),
  );
  return {
    atTheEnd: verdictOn(counted, history, null),
    first: ever.find((verdict) => !OPEN.includes(verdict)) ?? 'cannot tell yet',
    ever,
  };
}

/** Each rider's runs until every arm was ridden `blocks` times. */
function upToBlock(counted: readonly ComparisonRun[], blocks: number): ComparisonRun[] {
  const riders = [...new Set(counted.map(({ rider }) => rider))];
  return riders.flatMap((rider) => {
    const own = counted.filter((run) => run.rider === rider);
    const seen = new Map<string, number>();
    const whole = own.findIndex(({ arm }) => {
      seen.set(arm, (seen.get(arm) ?? 0) + 1);
      return seen.size > 1 && Math.min(...seen.values()) >= blocks;
    });
    return own.slice(0, whole + 1);
  });
}

/** Sessions in which one rider tried two other set-ups that were alike. */
function pastRuns(seed: number, index: number, sessions: number): ComparisonRun[] {
  const random = stream(seed, index, PURPOSE.past);
  return Array.from({ length: sessions }, (_, i) =>
    timesOf(PAST_PLAN.runs, { difference: 0 }, `session ${i + 1}`, random),
  ).flat();
}
