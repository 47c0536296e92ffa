import type { ArmComparison } from './arm-comparison.js';
import { compareSetUps, type Comparison } from './compare-set-ups.js';
import type { ComparisonRequest } from './comparison-request.js';

/** One section of a track: the runs with its times, and the team's scatter on it. */
export interface SectionRuns extends Pick<ComparisonRequest, 'runs' | 'history'> {
  readonly section: string;
}

/** A comparison of one section among several. */
export interface SectionComparison extends Comparison {
  readonly section: string;
}

/**
 * Compares set-ups on each section of a track, as compareSetUps does on the whole; shares of time on the log scale.
 *
 * P values are multiplied by the number of sections (Bonferroni), since whoever looks at several finds something in one
 * by chance; a verdict that does not stand this is 'cannot tell yet', with its reason. Intervals are each section's own.
 * Throws EvidenceInputError as compareSetUps does; no section gives an empty list.
 */
export function compareSections(
  request: Omit<ComparisonRequest, 'runs' | 'history'>,
  sections: readonly SectionRuns[],
): SectionComparison[] {
  return sections.map(({ section, runs, history }) => {
    const comparison = compareSetUps({ ...request, runs, history }, sections.length);
    const arms = comparison.arms.map((arm) => amongSections(arm, sections.length, comparison.alpha));
    return { ...comparison, section, arms };
  });
}

function amongSections(arm: ArmComparison, sections: number, alpha: number): ArmComparison {
  const adjusted = (p: number | null) => (p === null ? null : Math.min(1, sections * p));
  const pDifference = adjusted(arm.pDifference);
  const pEquivalence = adjusted(arm.pEquivalence);
  const basis =
    arm.verdict === 'no practical difference'
      ? pEquivalence
      : arm.verdict === 'faster' || arm.verdict === 'slower'
        ? pDifference
        : null;
  if (basis === null || basis < alpha) return { ...arm, pDifference, pEquivalence };
  return {
    ...arm,
    pDifference,
    pEquivalence,
    verdict: 'cannot tell yet',
    sentence: `Alone this section would say '${arm.verdict}'; among ${sections} sections that may be chance.`,
  };
}
