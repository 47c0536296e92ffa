import type { CaseName, TeamOutcome } from './set-up-study.js';
import type { PlanCase, PlanOutcome } from './verdict-study.js';

/** A set-up this close to the reserve wanted counts as there, m. */
const THERE = 0.006;

/** Where the best allowed set-up is this close, there is room for an error of a few millimetres, m. */
const ROOMY = 0.003;

/** Of the teams that can, those whose best allowed set-up is well within what counts as there. */
export const withRoom = (outcomes: readonly TeamOutcome[]): TeamOutcome[] =>
  outcomes.filter(({ leastMiss }) => leastMiss !== null && leastMiss <= ROOMY);

/** Teams in which an allowed set-up comes close enough: of the others nobody could do it. */
export function ofTeamsThatCan(outcomes: readonly TeamOutcome[], caseName: CaseName): TeamOutcome[] {
  return outcomes.filter(
    (outcome) => outcome.caseName === caseName && outcome.leastMiss !== null && outcome.leastMiss <= THERE,
  );
}

/** Share of teams that are there after so many runs, 1. */
export const shareThere = (outcomes: readonly TeamOutcome[], runs: number): number =>
  outcomes.filter(({ misses }) => (misses[runs] as number) <= THERE).length / outcomes.length;

/** Mean over teams of how much further off they are than the best allowed set-up, m. */
export const meanRegret = (outcomes: readonly TeamOutcome[], runs: number): number =>
  outcomes.reduce((sum, { misses, leastMiss }) => sum + (misses[runs] as number) - (leastMiss ?? 0), 0) /
  outcomes.length;

/** Whether a plan ended, or ever was, with a verdict that is not true. */
export function isWrong({ ever }: PlanOutcome, { difference }: PlanCase): boolean {
  const isFalse = (verdict: string): boolean =>
    (verdict === 'faster' && difference >= 0) || (verdict === 'slower' && difference <= 0);
  return ever.some(isFalse);
}
