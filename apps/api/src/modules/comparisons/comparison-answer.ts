import type { ArmComparisonDto, ComparedDto, RatingComparisonDto } from './comparison-arm.dto.js';
import type { ComparisonDto, RunPointDto } from './comparison.dto.js';
import type { SectionComparisonDto } from './section-comparison.dto.js';
import type { ComparisonWish, RatedRun, TimeAndFeel } from './compute-comparison.js';

const PER_CENT = 100;

/** What the answer says beside what was computed. */
export interface ComparisonFrame {
  readonly planId: string | null;
  readonly wish: ComparisonWish;
  /** How an arm of the comparison is shown. */
  readonly shown: (arm: string) => ComparedDto;
  readonly sentences: readonly string[];
  /** The only rider whose runs are shown; null: all. */
  readonly onlyRider: string | null;
}

export function comparisonAnswer(frame: ComparisonFrame, computed: TimeAndFeel): ComparisonDto {
  const { wish, shown } = frame;
  const { time, feel } = computed;
  return {
    planId: frame.planId,
    look: wish.look?.number ?? null,
    ofLooks: wish.look?.of ?? null,
    errorRatePct: time.alpha * PER_CENT,
    feelComparisons: feel.among,
    feelErrorRatePct: feel.alpha * PER_CENT,
    marginPct: wish.margin * PER_CENT,
    trend: wish.trend,
    status: time.status,
    sentences: [...time.sentences, ...frame.sentences],
    counts: {
      runs: time.counts.runs,
      voided: time.counts.voided,
      untimed: time.counts.untimed,
      timed: time.counts.timed,
    },
    scatter: time.variance && {
      scatterPct: Math.sqrt(time.variance.variance) * PER_CENT,
      df: time.variance.df,
      source: time.variance.source,
    },
    trendOverSessionPct: shareOf(time.trendOverSession),
    current: shown(wish.current),
    arms: time.arms.map((arm) => armAnswer(arm, shown, computed)),
    sections: computed.sections.map((section) => sectionAnswer(section, shown)),
    voids: time.voids.map(({ arm, voided, ridden, p }) => ({ ...shown(arm), voided, ridden, p })),
    points: pointAnswers(frame, computed),
  };
}

function armAnswer(
  arm: TimeAndFeel['time']['arms'][number],
  shown: ComparisonFrame['shown'],
  { feel }: TimeAndFeel,
): ArmComparisonDto {
  return {
    ...shown(arm.arm),
    verdict: arm.verdict,
    sentence: arm.sentence,
    timedRuns: arm.timedRuns,
    differencePct: shareOf(arm.difference),
    lowPct: shareOf(arm.interval?.low ?? null),
    highPct: shareOf(arm.interval?.high ?? null),
    df: arm.df,
    pDifference: arm.pDifference,
    pEquivalence: arm.pEquivalence,
    needed: arm.needed && {
      forDifference: arm.needed.forDifference,
      forEquivalence: arm.needed.forEquivalence,
      forEquivalenceAtMost: arm.needed.forEquivalenceAtMost,
    },
    feel: feel.rated.filter((entry) => entry.arm === arm.arm).map(ratingAnswer),
  };
}

const sectionAnswer = (
  { section, sentences, arms }: TimeAndFeel['sections'][number],
  shown: ComparisonFrame['shown'],
): SectionComparisonDto => ({
  section,
  sentences,
  arms: arms.map((arm) => ({
    ...shown(arm.arm),
    verdict: arm.verdict,
    sentence: arm.sentence,
    timedRuns: arm.timedRuns,
    differencePct: shareOf(arm.difference),
    lowPct: shareOf(arm.interval?.low ?? null),
    highPct: shareOf(arm.interval?.high ?? null),
  })),
});

const ratingAnswer = (rated: TimeAndFeel['feel']['rated'][number]): RatingComparisonDto => ({
  aspect: rated.aspect,
  status: rated.status,
  sentence: rated.sentence,
  ratings: rated.counts.a,
  currentRatings: rated.counts.b,
  median: rated.medians.a,
  currentMedian: rated.medians.b,
  superiority: rated.superiority,
  p: rated.p,
  smallestP: rated.smallestP,
  pAmong: rated.pAmong,
  smallestPAmong: rated.smallestPAmong,
  oddsRatio: rated.odds?.ratio ?? null,
  oddsRatioLow: rated.odds?.low ?? null,
  oddsRatioHigh: rated.odds?.high ?? null,
});

/** The points that were fitted are those of the timed runs that count, in the order of the runs. */
function pointAnswers({ wish, shown, onlyRider }: ComparisonFrame, { time }: TimeAndFeel): RunPointDto[] {
  const timed = wish.runs.filter((run) => !run.voided && run.time !== null);
  const fitted = new Map(timed.map((run, i) => [run.id, time.points[i]]));
  return wish.runs
    .filter(({ rider }) => onlyRider === null || rider === onlyRider)
    .map((run) => ({
      ...shown(run.arm),
      runId: run.id,
      riderId: run.rider,
      sessionId: run.session,
      position: run.position,
      voided: run.voided,
      timeS: run.time,
      fittedS: lessLog(run, fitted.get(run.id)?.residual),
      trendS: lessLog(run, fitted.get(run.id)?.adjusted),
    }));
}

/** The run's time less a part of its logarithm. */
const lessLog = ({ time }: RatedRun, part: number | undefined): number | null =>
  time === null || part === undefined ? null : time * Math.exp(-part);

const shareOf = (difference: number | null): number | null =>
  difference === null ? null : Math.expm1(difference) * PER_CENT;
