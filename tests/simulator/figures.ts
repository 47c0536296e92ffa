import type { Verdict } from '@loamledger/evidence';
import type { CaseName, TeamOutcome } from './set-up-study.js';
import { MARGIN } from './contract.js';
import type { ArmOutcome, PlanCase, PlanOutcome } from './verdict-study.js';

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

/** Whether 'faster' or 'slower' is not true of a set-up with this true difference. */
const isFalse = (verdict: Verdict, difference: number): boolean =>
  (verdict === 'faster' && difference >= 0) || (verdict === 'slower' && difference <= 0);

/** Whether a verdict is one, and true: of a difference within the margin that it is real, or that it is within. */
export const isTrue = (verdict: Verdict, difference: number): boolean =>
  verdict === 'no practical difference'
    ? Math.abs(difference) <= MARGIN
    : (verdict === 'faster' && difference < 0) || (verdict === 'slower' && difference > 0);

/** Whether a set-up was ever called faster or slower wrongly, looked at after every block. */
export const isArmWrong = ({ ever }: ArmOutcome, difference: number): boolean =>
  ever.some((verdict) => isFalse(verdict, difference));

/** Whether any set-up of a plan was ever called faster or slower wrongly, looked at after every block. */
export const isWrong = ({ arms }: PlanOutcome, { differences }: PlanCase): boolean =>
  arms.some((arm, i) => isArmWrong(arm, differences[i] as number));

/** The same, looked at once in the end. */
export const isWrongAtTheEnd = ({ arms }: PlanOutcome, { differences }: PlanCase): boolean =>
  arms.some(({ atTheEnd }, i) => isFalse(atTheEnd, differences[i] as number));
