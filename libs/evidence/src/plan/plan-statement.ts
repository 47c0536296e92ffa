import { levelAtLook } from '../compare/look-levels.js';
import { fewestRiders } from '../compare/riders-needed.js';
import type { OrderScore } from './order-score.js';
import {
  detectableDifference,
  powerOfDifference,
  powerOfEquivalence,
  runsForPower,
  WANTED_POWER,
  type PowerQuestion,
} from './power.js';
import type { TestPlanRequest } from './plan-request.js';

/**
 * What a plan can tell, said before the first run. With several riders the figures are for these riders only, by the
 * scatter between runs: how riders differ in what suits them is not known before it. The sentences say what that leaves
 * for riders in general, whom the verdicts are for.
 */
export interface PlanStatement {
  /** Smallest difference of log time found 8 times in 10; null when the plan cannot test or the scatter is not known. */
  detectableDifference: number | null;
  /** Chances of finding a difference as large as the margin, and of showing that a difference of 0 is within it. */
  powerAtMargin: number | null;
  powerOfEquivalence: number | null;
  /** Runs of each set-up (over all riders) that the margin asks for; null: more than a team can ride. */
  runsForDifference: number | null;
  runsForEquivalence: number | null;
  sentences: string[];
}

const ALPHA = 0.05;
const PER_CENT = 100;

/** What the plan can tell, from the team's own scatter; differences on the log scale. */
export function statementOf(request: TestPlanRequest, score: OrderScore): PlanStatement {
  const sentences = [orderSentence(request, score)];
  const nothing = {
    detectableDifference: null,
    powerAtMargin: null,
    powerOfEquivalence: null,
    runsForDifference: null,
    runsForEquivalence: null,
  };
  if (request.runsAnArm * request.riders.length < 2) {
    sentences.push('One run a set-up: order and set-up cannot be told apart, so no test is possible.');
    return { ...nothing, sentences };
  }
  if (request.scatter === null) {
    sentences.push(
      "The team's scatter between runs is not known yet: what difference this plan can tell will be known after it.",
    );
    return { ...nothing, sentences };
  }
  const { sd, df } = request.scatter;
  const arms = request.arms.length;
  const alpha = levelAtLook(ALPHA, { number: request.looks, of: request.looks }, arms - 1) / (arms - 1);
  const inflation = score.maxInflation;
  const margin = Math.log1p(request.margin);
  const lost = request.arms.length * request.runsAnArm * request.riders.length - score.residualDf;
  const question = (runs: number): PowerQuestion => ({
    unscaledSe: Math.sqrt((2 / runs) * (inflation ?? 1)),
    df: Math.max(1, arms * runs - lost) + df,
    alpha,
  });
  const planned = request.runsAnArm * request.riders.length;
  const runsForDifference = runsForPower((runs) => powerOfDifference(margin, sd, question(runs)));
  const runsForEquivalence = runsForPower((runs) => powerOfEquivalence(0, margin, sd, question(runs)));
  const testable = inflation !== null && score.residualDf > 0;
  const smallest = testable ? detectableDifference(sd, question(planned)) : null;
  if (smallest === null)
    sentences.push('This order leaves nothing to judge the scatter by: no test is possible.');
  else
    sentences.push(
      `${whom(request)}a difference of ${percent(Math.expm1(smallest))} is found 8 times in 10.`.replace(
        /^a/,
        'A',
      ),
    );
  sentences.push(
    runsSentence(`telling a difference of ${percent(request.margin)}`, runsForDifference),
    runsSentence(`telling "no practical difference" at ${percent(request.margin)}`, runsForEquivalence),
  );
  if (request.riders.length > 1 && testable) sentences.push(generalSentence(request, sd, question(planned)));
  return {
    detectableDifference: smallest,
    powerAtMargin: testable ? powerOfDifference(margin, sd, question(planned)) : null,
    powerOfEquivalence: testable ? powerOfEquivalence(0, margin, sd, question(planned)) : null,
    runsForDifference,
    runsForEquivalence,
    sentences,
  };
}

const percent = (share: number): string => `${(share * PER_CENT).toFixed(1)} %`;

function runsSentence(what: string, runs: number | null): string {
  const chance = `${(WANTED_POWER * PER_CENT).toFixed(0)} %`;
  return runs === null
    ? `No number of runs a team can ride is enough for ${what}.`
    : `With ${chance} chance, ${what} takes ${runs} runs of each set-up.`;
}

const whom = ({ riders }: TestPlanRequest): string =>
  riders.length === 1 ? '' : `For these ${riders.length} riders only, `;

/** What the plan leaves for riders in general: at best, as what suits each rider is not known before it. */
function generalSentence({ riders, arms }: TestPlanRequest, sd: number, question: PowerQuestion): string {
  const fewest = fewestRiders(arms.length);
  if (riders.length < fewest) {
    return `For riders in general there will be no verdict, however many runs they ride: that takes at least ${fewest} riders.`;
  }
  const df = (riders.length - 1) * (arms.length - 1);
  const best = Math.expm1(detectableDifference(sd, { ...question, df }));
  return `For riders in general, whom the verdict is for, it is ${percent(best)} if the same suits all of them, and more the more they differ in that, which only the runs will show.`;
}

function orderSentence({ trend, riders }: TestPlanRequest, { maxInflation }: OrderScore): string {
  if (maxInflation === null)
    return `With a ${trend} trend over the session these runs cannot tell the set-ups apart.`;
  const who = riders.length === 1 ? 'The order' : `The orders of ${riders.length} riders`;
  return `${who}: the least certain difference has ${maxInflation.toFixed(2)} times the variance of an ideal order.`;
}
