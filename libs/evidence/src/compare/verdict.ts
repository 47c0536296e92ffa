import { tUpperQuantile } from '../numerics/distributions.js';
import { tooFewDf } from './few-df.js';
import type { RunsStillNeeded } from './runs-needed.js';

/** What a comparison says about one set-up against the current one. */
export type Verdict = 'faster' | 'slower' | 'no practical difference' | 'cannot tell yet' | 'no verdict';

/** A verdict with its sentence for the reader. */
export interface ReasonedVerdict {
  verdict: Verdict;
  sentence: string;
}

/** What a verdict is taken from; differences on the log scale. */
export interface VerdictBasis {
  estimate: number;
  se: number;
  df: number;
  /** Adjusted for the number of set-ups compared. */
  pDifference: number;
  pEquivalence: number;
  alpha: number;
  margin: number;
  /** Whether the scatter leans on past sessions. */
  borrowed: boolean;
  whom: 'these riders' | 'riders in general';
}

const PER_CENT = 100;

/** A difference on the log scale as per cent of time, with its sign. */
export const percent = (log: number): string => {
  const share = Math.expm1(log) * PER_CENT;
  return `${share > 0 ? '+' : ''}${share.toFixed(1)} %`;
};

/** A size on the log scale as per cent of time: it has no direction. */
export const unsignedPercent = (log: number): string => percent(log).replace('+', '');

/**
 * Verdict from adjusted P values: faster or slower below α, no practical difference where both one-sided tests are
 * below α, else cannot tell yet. A difference that is both real and inside the margin is no practical difference.
 * Both families may use the whole α, as a true difference cannot be 0 and beyond the margin at once (goeman2010).
 */
export function verdictOf(basis: VerdictBasis, needed: RunsStillNeeded | null): ReasonedVerdict {
  const { estimate, se, df, alpha, margin } = basis;
  const borrowed = basis.borrowed ? " The scatter leans on the team's past sessions." : '';
  if (tooFewDf(df) && !basis.borrowed) {
    const shown = Number(df.toFixed(1));
    const whom = basis.whom === 'riders in general' ? ' for riders in general' : '';
    const sentence = `Only ${shown} degree${shown === 1 ? '' : 's'} of freedom${whom}: the interval is too wide for a verdict.`;
    return { verdict: 'cannot tell yet', sentence: sentence + neededSentence(needed) };
  }
  const real = basis.pDifference < alpha;
  if (basis.pEquivalence < alpha) {
    const small = real ? ' The difference is real but smaller than the margin.' : '';
    return {
      verdict: 'no practical difference',
      sentence: `Within ± ${unsignedPercent(margin)} (${percent(estimate)}).${small}${borrowed}`,
    };
  }
  if (real) {
    const verdict = estimate < 0 ? 'faster' : 'slower';
    return { verdict, sentence: `${percent(estimate)} of time.${borrowed}` };
  }
  const unreachable =
    tUpperQuantile(alpha, df) * se >= margin
      ? ' With this scatter and these runs even a difference of 0 could not be told from the margin.'
      : '';
  return {
    verdict: 'cannot tell yet',
    sentence: `Between these runs ${percent(estimate)} may be chance.${unreachable}${neededSentence(needed)}${borrowed}`,
  };
}

/** What it takes 8 times in 10: where these runs should have been enough, they are said to be, and not that none are missing. */
function neededSentence(needed: RunsStillNeeded | null): string {
  if (needed === null) return '';
  const words = (runs: number | null): string => {
    if (runs === null) return 'more runs than can be ridden';
    return runs === 0 ? 'as many as these' : `${runs} more`;
  };
  const { forEquivalence, forEquivalenceAtMost } = needed;
  const atMost =
    forEquivalenceAtMost === forEquivalence
      ? ''
      : ` (${words(forEquivalenceAtMost)}, if the scatter is as large as these runs allow)`;
  return ` Of each set-up it takes ${words(needed.forDifference)} to find a difference as large as the margin 8 times in 10, ${words(forEquivalence)} to show that there is none${atMost}.`;
}
