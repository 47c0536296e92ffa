import type { PlanCase } from './verdict-study.js';

/** The plans that the whole simulation has ridden, and how often each. */

const PAST_SESSIONS = 12;

const RUNS_AN_ARM = [4, 8, 16] as const;
/** Below zero: the tried set-up is faster. */
const DIFFERENCES = [0, -0.005, -0.01, -0.02, -0.03] as const;
const ONE_RIDER = { riders: 1, suitsSd: 0, voidShare: 0 } as const;

/** One rider, and a current set-up against another. */
export const PLANS_OF_ONE: readonly PlanCase[] = [
  ...DIFFERENCES.flatMap((difference) =>
    RUNS_AN_ARM.map((runsAnArm) => ({
      ...ONE_RIDER,
      runsAnArm,
      differences: [difference],
      pastSessions: PAST_SESSIONS,
    })),
  ),
  ...RUNS_AN_ARM.map((runsAnArm) => ({ ...ONE_RIDER, runsAnArm, differences: [0], pastSessions: 0 })),
];

/** Riders, and the true differences of the set-ups that they try. */
const TEAMS = [3, 5] as const;
const ALIKE = [
  [0, 0],
  [0, 0, 0],
] as const;
const DIFFERENT = [
  [-0.005, -0.02],
  [-0.005, -0.02, 0.03],
] as const;
/** Invented: riders differ in what suits them by as much as the margin, by half of it, or not at all. */
const SUITS_SDS = [0.01, 0.005, 0] as const;
const SOME_SUITS_SD = 0.005;
const SEVERAL_RIDERS = { runsAnArm: 4, voidShare: 0.1, pastSessions: PAST_SESSIONS } as const;

/** Several riders, some of whose runs are void, and set-ups that are alike. */
export const PLANS_OF_SEVERAL_ALIKE: readonly PlanCase[] = TEAMS.flatMap((riders) =>
  ALIKE.flatMap((differences) =>
    SUITS_SDS.map((suitsSd) => ({ ...SEVERAL_RIDERS, riders, differences, suitsSd })),
  ),
);

/** The same with set-ups that differ. */
export const PLANS_OF_SEVERAL: readonly PlanCase[] = TEAMS.flatMap((riders) =>
  DIFFERENT.map((differences) => ({ ...SEVERAL_RIDERS, riders, differences, suitsSd: SOME_SUITS_SD })),
);

/** How often a plan is ridden: where nothing differs, the share of wrong verdicts is what matters. */
export function plansOf({ riders, differences }: PlanCase): number {
  const isAlike = differences.every((difference) => difference === 0);
  if (riders === 1) return isAlike ? 2000 : 150;
  return isAlike ? 300 : 150;
}
