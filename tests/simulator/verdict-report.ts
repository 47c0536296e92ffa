import type { Verdict } from '@loamledger/evidence';
import { isArmWrong, isTrue, isWrong, isWrongAtTheEnd } from './figures.js';
import { table, tenth } from './markdown.js';
import { shareError } from './share.js';
import type { ArmOutcome, PlanCase, PlanOutcome } from './verdict-study.js';

/** One plan with what came of riding it many times. */
export interface PlanFigures {
  readonly plan: PlanCase;
  readonly outcomes: readonly PlanOutcome[];
}

/** The plans of the page, one table each. */
export interface VerdictFigures {
  readonly ofOne: readonly PlanFigures[];
  /** Of several riders whose set-ups are alike, and are not. */
  readonly alike: readonly PlanFigures[];
  readonly different: readonly PlanFigures[];
}

const VERDICTS = ['faster', 'slower', 'no practical difference', 'cannot tell yet'] as const;
const VERDICT_HEADS = [
  ...VERDICTS.map((verdict) => `${verdict}, one look`),
  ...VERDICTS.map((verdict) => `${verdict}, after every block`),
];
const EVER_WRONG = 'ever wrongly faster or slower';

/** The generated part of the page about verdicts. */
export const verdictReport = (seed: number, { ofOne, alike, different }: VerdictFigures): string =>
  [
    '## Verdicts on time',
    `Seed ${seed}. One rider and a current set-up against another; shares in per cent.`,
    tableOfOne(ofOne),
    '## Verdicts of several riders',
    `Seed ${seed}. A current set-up against two or three others, ${runsOf(alike)} runs of each rider on each, one run in ` +
      `${voidsOf(alike)} void and not ridden again. Riders differ in what suits them by the standard deviation given; in ` +
      'general all set-ups are alike. Share of plans, per cent, in which any was called faster or slower; standard errors in ' +
      'brackets.',
    tableOfAlike(alike),
    'Set-ups that differ in general, and riders in what suits them by ' +
      `${suits(different[0]?.plan)}; shares in per cent of the plans. True is faster or slower of one that is, and no ` +
      'practical difference of one that is within 1 %.',
    tableOfDifferent(different),
  ].join('\n\n');

const runsOf = ([first]: readonly PlanFigures[]): string => String(first?.plan.runsAnArm);
const voidsOf = ([first]: readonly PlanFigures[]): string => (1 / (first?.plan.voidShare ?? 0)).toFixed(0);
const suits = (plan: PlanCase | undefined): string => `${tenth(plan?.suitsSd ?? 0)} %`;
const faster = (difference: number): string =>
  difference > 0 ? `${tenth(difference)} % slower` : `${tenth(-difference)} % faster`;

/** Share of some of the outcomes, with a tenth. */
const shareOf = <T>(outcomes: readonly T[], isSo: (outcome: T) => boolean): string =>
  tenth(outcomes.filter(isSo).length / outcomes.length);

/** The same with its standard error. */
function shareWithError(outcomes: readonly boolean[]): string {
  const share = outcomes.filter(Boolean).length / outcomes.length;
  return `${tenth(share)} (${tenth(shareError(share, outcomes.length))})`;
}

const verdictCells = (arms: readonly ArmOutcome[]): string[] => [
  ...VERDICTS.map((verdict) => shareOf(arms, ({ atTheEnd }) => atTheEnd === verdict)),
  ...VERDICTS.map((verdict) => shareOf(arms, ({ first }) => first === verdict)),
];

/** What came of one tried set-up of a plan. */
const armOf = (outcomes: readonly PlanOutcome[], i: number): ArmOutcome[] =>
  outcomes.map(({ arms }) => arms[i] as ArmOutcome);

const tableOfOne = (plans: readonly PlanFigures[]): string =>
  table(
    ['true difference', 'runs an arm', 'past sessions', 'plans', ...VERDICT_HEADS, EVER_WRONG],
    plans.map(({ plan, outcomes }) => [
      faster(plan.differences[0] as number),
      String(plan.runsAnArm),
      String(plan.pastSessions),
      String(outcomes.length),
      ...verdictCells(armOf(outcomes, 0)),
      shareOf(outcomes, (outcome) => isWrong(outcome, plan)),
    ]),
  );

function tableOfAlike(plans: readonly PlanFigures[]): string {
  const wrong = (figures: readonly PlanFigures[], isSo: typeof isWrong): string =>
    shareWithError(figures.flatMap(({ plan, outcomes }) => outcomes.map((outcome) => isSo(outcome, plan))));
  const cells = (figures: readonly PlanFigures[]): string[] => [
    String(figures.reduce((sum, { outcomes }) => sum + outcomes.length, 0)),
    wrong(figures, isWrongAtTheEnd),
    wrong(figures, isWrong),
  ];
  return table(
    ['riders', 'set-ups', 'riders differ by', 'plans', 'wrongly faster or slower, one look', EVER_WRONG],
    [
      ...plans.map((figures) => [
        String(figures.plan.riders),
        String(figures.plan.differences.length + 1),
        suits(figures.plan),
        ...cells([figures]),
      ]),
      ['all', '', '', ...cells(plans)],
    ],
  );
}

const tableOfDifferent = (plans: readonly PlanFigures[]): string =>
  table(
    [
      'true difference',
      'riders',
      'set-ups',
      'plans',
      ...VERDICT_HEADS,
      'true, one look',
      'true, after every block',
      EVER_WRONG,
    ],
    plans.flatMap(({ plan, outcomes }) =>
      plan.differences.map((difference, i) => {
        const arms = armOf(outcomes, i);
        const isSaid = (verdict: Verdict): boolean => isTrue(verdict, difference);
        return [
          faster(difference),
          String(plan.riders),
          String(plan.differences.length + 1),
          String(outcomes.length),
          ...verdictCells(arms),
          shareOf(arms, ({ atTheEnd }) => isSaid(atTheEnd)),
          shareOf(arms, ({ first }) => isSaid(first)),
          shareOf(arms, (arm) => isArmWrong(arm, difference)),
        ];
      }),
    ),
  );
