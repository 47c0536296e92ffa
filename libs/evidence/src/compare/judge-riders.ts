import type { ArmComparison } from './arm-comparison.js';
import type { ComparisonRequest } from './comparison-request.js';
import type { RiderModel } from './rider-model.js';
import { tooFewDf } from './few-df.js';
import { fewestRiders, ridersForDifference } from './riders-needed.js';
import { testArms, type Levels } from './test-arms.js';
import type { TimedRun } from './time-model.js';
import { percent, unsignedPercent } from './verdict.js';

/**
 * Verdicts on the set-ups for riders in general. Where there are too few riders for one, the reading for these riders only
 * stands behind it, by its name; it never takes its place. `these` has that reading of each set-up.
 */
export function judgeRiders(
  request: ComparisonRequest,
  timed: readonly TimedRun[],
  model: RiderModel | null,
  these: readonly ArmComparison[],
  levels: Levels,
): ArmComparison[] {
  const riders = new Set(timed.map(({ rider }) => rider)).size;
  const testable = these.filter(({ verdict }) => verdict !== 'no verdict').map(({ arm }) => arm);
  const tested = (model?.differences ?? []).filter(({ arm }) => testable.includes(arm));
  const at = tested.map((difference) => model?.differences.indexOf(difference) ?? 0);
  const margin = Math.log1p(request.margin);
  const judged = testArms(
    timed,
    tested.map((difference) => ({ ...difference, needed: null })),
    {
      alpha: levels.now,
      margin,
      borrowed: false,
      whom: 'riders in general',
      covariance: (i, j) => model?.covariance[at[i] as number]?.[at[j] as number] ?? Number.NaN,
    },
  );
  return these.map((reading) => {
    if (!testable.includes(reading.arm)) return reading;
    const general = judged.find(({ arm }) => arm === reading.arm) ?? untold(reading);
    if (general.verdict !== 'cannot tell yet') return general;
    const { se, df } = general;
    const sentence =
      se === null || df === null || tooFewDf(df)
        ? `${general.sentence}${fewestSentence(these.length + 1)}${readingSentence(reading, riders)}`
        : general.sentence +
          neededSentence(
            ridersForDifference({ se, df, riders, alpha: levels.end / tested.length, margin }),
            riders,
            request.margin,
          );
    return { ...general, sentence };
  });
}

/** A set-up of which nothing at all can be told for riders in general. */
const untold = (reading: ArmComparison): ArmComparison => ({
  ...reading,
  se: null,
  df: null,
  interval: null,
  pDifference: null,
  pEquivalence: null,
  verdict: 'cannot tell yet',
  sentence:
    'These runs do not show how riders differ in what suits them: nothing can be told for riders in general.',
  needed: null,
});

const fewestSentence = (arms: number): string =>
  ` For riders in general it takes at least ${fewestRiders(arms)} riders who ride every set-up.`;

const readingSentence = ({ verdict, difference }: ArmComparison, riders: number): string =>
  ` For these ${riders} riders only: ${verdict} (${percent(difference ?? 0)}).`;

function neededSentence(needed: number | null, riders: number, margin: number): string {
  const find = `to find ${unsignedPercent(Math.log1p(margin))}`;
  if (needed === null)
    return ` With as many runs each, no number of riders that a team has is enough ${find}.`;
  const number = needed === riders ? 'as many riders as these' : `about ${needed} riders`;
  return ` With as many runs each it takes ${number} ${find} 8 times in 10.`;
}
