import {
  compareFeel,
  compareSections,
  compareSetUps,
  sessionVariances,
  withVoidsCounted,
  type Comparison,
  type ComparisonRequest,
  type ComparisonRun,
  type FeelComparison,
  type SectionComparison,
} from '@loamledger/evidence';
import type { Computation } from '../../platform/compute/compute-thread.js';
import type { SectionedRun } from '../scatter/comparison-run.js';

/** What a rider rates after a run. */
export const ASPECTS = ['support', 'comfort', 'rideHeight', 'fatigue'] as const;
export type Aspect = (typeof ASPECTS)[number];

/** A run of a comparison with what its rider felt. */
export interface RatedRun extends SectionedRun {
  readonly id: string;
  readonly ratings: Readonly<Record<Aspect, number | null>>;
}

/** What is to be compared: the scatter of the past runs is found on the way. */
export interface ComparisonWish extends Omit<ComparisonRequest, 'runs' | 'history'> {
  readonly runs: readonly RatedRun[];
  readonly pastRuns: readonly SectionedRun[];
}

/** Time and feel, side by side, and the time on each section. */
export interface TimeAndFeel {
  readonly time: Comparison;
  readonly sections: readonly SectionComparison[];
  readonly feel: FeelComparison<Aspect>;
}

/** @public Compares times and ratings. The computing thread finds it by its name. */
export function compare({ pastRuns, ...request }: ComparisonWish): TimeAndFeel {
  const wanted = { ...request, history: sessionVariances(pastRuns) };
  const time = withVoidsCounted(wanted, compareSetUps(wanted));
  const questions = time.arms.flatMap(({ arm }) =>
    ASPECTS.map((aspect) => ({ arm, aspect, strata: ratingsOf(request, arm, aspect) })),
  );
  return {
    time,
    feel: compareFeel(questions, request.look),
    sections: compareSections(request, sectionsOf(request.runs, pastRuns)),
  };
}

/** The sections with times, in riding order, each with the runs and past runs on it. */
function sectionsOf(runs: readonly RatedRun[], pastRuns: readonly SectionedRun[]) {
  // A run with all of its sections timed has them in riding order; those with fewer have none before it.
  const fullest = runs.toSorted((a, b) => b.sectionTimes.length - a.sectionTimes.length);
  const names = [...new Set(fullest.flatMap((run) => run.sectionTimes.map(({ section }) => section)))];
  const tracks = new Set(runs.map(({ track }) => track));
  const here = pastRuns.filter(({ track }) => tracks.has(track));
  return names.map((section) => {
    const timedOn = (run: SectionedRun): ComparisonRun => ({
      ...run,
      time: run.sectionTimes.find((entry) => entry.section === section)?.time ?? null,
    });
    return { section, runs: runs.map(timedOn), history: sessionVariances(here.map(timedOn)) };
  });
}

/** Each rider's ratings of a set-up and of the current one in one aspect. */
function ratingsOf({ runs, current }: Pick<ComparisonWish, 'runs' | 'current'>, arm: string, aspect: Aspect) {
  const by = (rider: string, of: string): number[] =>
    runs
      .filter((run) => run.rider === rider && run.arm === of && !run.voided)
      .flatMap(({ ratings }) => ratings[aspect] ?? []);
  const riders = [...new Set(runs.map(({ rider }) => rider))];
  return riders.map((rider) => ({ a: by(rider, arm), b: by(rider, current) }));
}

export const COMPARE: Computation<ComparisonWish, TimeAndFeel> = {
  module: new URL(import.meta.url),
  name: compare.name,
};
