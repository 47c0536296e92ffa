import { compareSetUps, type Comparison } from './compare-set-ups.js';
import type { ComparisonRequest } from './comparison-request.js';
import { percent } from './verdict.js';

/**
 * A comparison whose set-ups also say what they would be with timed void runs counted: how much hangs on leaving them out.
 *
 * A sensitivity, no second verdict: verdict, interval and P values stay those without them. The same comparison where no
 * void run of a set-up or of the current one has a time. Throws EvidenceInputError as compareSetUps does.
 */
export function withVoidsCounted(request: ComparisonRequest, comparison: Comparison): Comparison {
  const timed = request.runs.filter(({ voided, time }) => voided && time !== null);
  if (timed.length === 0) return comparison;
  const runs = request.runs.map((run) => (run.time === null ? run : { ...run, voided: false }));
  const counted = compareSetUps({ ...request, runs }).arms;
  return {
    ...comparison,
    arms: comparison.arms.map((own) => {
      const other = counted.find(({ arm }) => arm === own.arm);
      const its = timed.filter(({ arm }) => arm === own.arm || arm === request.current).length;
      if (other === undefined || its === 0) return own;
      const them = its === 1 ? 'the timed void run' : `the ${its} timed void runs`;
      return { ...own, sentence: `${own.sentence} With ${them} counted too: ${wordsOf(other)}.` };
    }),
  };
}

const wordsOf = ({ verdict, difference }: Comparison['arms'][number]): string =>
  difference === null ? verdict : `${verdict}, ${percent(difference)}`;
