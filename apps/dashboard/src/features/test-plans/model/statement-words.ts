import { formatCount, formatNumber } from '../../../shared/format/numbers.js';
import type { PlanPreview } from '../api/make-plan.js';
import { withUnit } from '../../../shared/format/with-unit.js';

/** A plan's size as its statement needs it. */
interface Size {
  readonly statement: PlanPreview['statement'];
  readonly runsAnArm: number;
  readonly riders: number;
  readonly marginPct: number;
}

/** Below this a second decimal tells more than nothing, %. */
const SMALL = 0.1;

/** What the figures, which know the scatter between runs only, leave out. */
const SEVERAL_RIDERS =
  'This is for these riders only. For riders in general it depends on how they differ in what suits them, which only the runs will show; with two set-ups that takes at least four riders.';

const percent = (value: number) => withUnit(formatNumber(value, value < SMALL ? 2 : 1), '%');
const timesIn100 = (chance: number) => `${formatNumber(chance)} times in 100`;

/** What a plan can tell, in the order in which a coach asks. */
export function statementWords({ statement, runsAnArm, riders, marginPct }: Size): string[] {
  const { scatterPct, detectableDifferencePct, powerAtMarginPct, powerOfEquivalencePct } = statement;
  const each = runsAnArm * riders;
  const runs = `${formatCount(each, 'run')} of each`;
  if (each < 2) return [`${runs} cannot tell anything: order and set-up cannot be told apart.`];
  if (scatterPct === null) {
    return [
      'Your scatter between runs is not known yet: it takes a session with timed runs.',
      `What ${runs} can tell is known after them.`,
    ];
  }
  if (detectableDifferencePct === null || powerAtMarginPct === null || powerOfEquivalencePct === null) {
    return [`${runs} leave nothing to judge your scatter by: ride more of each.`];
  }
  return [
    `With your scatter of ${percent(scatterPct)}, ${runs} would tell ${percent(detectableDifferencePct)} 8 times in 10.`,
    `A difference of ${percent(marginPct)} is found ${timesIn100(powerAtMarginPct)}.`,
    `Where there is no difference, that is shown ${timesIn100(powerOfEquivalencePct)}.`,
    neededWords(`To find ${percent(marginPct)} 8 times in 10`, statement.runsForDifference),
    neededWords(`To show that there is no such difference`, statement.runsForEquivalence),
    ...(riders > 1 ? [SEVERAL_RIDERS] : []),
  ];
}

const neededWords = (what: string, runs: number | null): string =>
  runs === null
    ? `${what} takes more runs than a team can ride.`
    : `${what} takes ${formatCount(runs, 'run')} of each.`;
