import { tUpperQuantile } from '../numerics/distributions.js';
import { requireComparison, type ComparisonRequest, type ComparisonRun } from './comparison-request.js';
import { commonFactor, maxTCritical } from './max-t.js';
import { moderateVariance, type ModeratedVariance, type SessionVariance } from './moderated-variance.js';
import { runsStillNeeded, type RunsStillNeeded } from './runs-needed.js';
import { alphaAtLook, differenceTest, equivalenceTest, fisherExact, holmAdjusted } from './tests.js';
import { fitRiderMeans, fitRuns, type TimedRun, type TimeModel } from './time-model.js';
import { verdictOf, type ReasonedVerdict } from './verdict.js';

/** One set-up against the current one; differences are of log time, negative is faster. */
export interface ArmComparison extends ReasonedVerdict {
  arm: string;
  timedRuns: number;
  difference: number | null;
  /** exp(difference) − 1. */
  share: number | null;
  se: number | null;
  df: number | null;
  /** Simultaneous interval over all set-ups compared, at 1 − alpha. */
  interval: { low: number; high: number } | null;
  /** Adjusted after Holm. */
  pDifference: number | null;
  pEquivalence: number | null;
  needed: RunsStillNeeded | null;
}

/** Void runs of one set-up, and how likely such a split between it and the current one is by chance. */
export interface VoidCount {
  arm: string;
  voided: number;
  ridden: number;
  p: number | null;
}

/** A whole comparison as plain JSON. */
export interface Comparison {
  status: 'compared' | 'nothing to compare';
  /** What the reader has to know about all of it. */
  sentences: string[];
  counts: { runs: number; voided: number; untimed: number; timed: number };
  /** Error rate at this look. */
  alpha: number;
  /** Of these runs alone: what a later comparison takes as history. */
  session: SessionVariance | null;
  /** What the tests used. */
  variance: ModeratedVariance | null;
  arms: ArmComparison[];
  voids: VoidCount[];
  trendOverSession: number | null;
  points: TimeModel['points'];
}

/** Error rate over the whole plan. */
const ALPHA = 0.05;
/** Standard deviation of log time below which equal times come from the timer, not from the rider. */
const TIMER_RESOLUTION = 1e-9;
/** Correlations that one common factor misses by more get Bonferroni's wider interval instead. */
const WORST_FACTOR_ERROR = 0.05;

/**
 * Compares set-ups with the current one on log time; differences are shares of time on the log scale.
 *
 * log time = arm + order trend + rider and session levels, ordinary least squares; with three riders or more who rode
 * every arm equally often, on rider means instead. Scatter moderated by history (smyth2004), Holm over the set-ups
 * (holm1979), equivalence by two one-sided tests (schuirmann1987), α spent over looks. docs/evidence/comparison.md.
 * Every degenerate case is a status with a sentence, never an exception; impossible input throws EvidenceInputError.
 */
export function compareSetUps(request: ComparisonRequest): Comparison {
  requireComparison(request);
  const { runs, current } = request;
  const timed = runs.filter((run): run is TimedRun => !run.voided && run.time !== null);
  const base = {
    counts: {
      runs: runs.length,
      voided: runs.filter((run) => run.voided).length,
      untimed: runs.filter((run) => !run.voided && run.time === null).length,
      timed: timed.length,
    },
    alpha: request.look === null ? ALPHA : alphaAtLook(ALPHA, request.look),
    voids: voidCounts(runs, current),
  };
  const others = [...new Set(runs.map((run) => run.arm))].filter((arm) => arm !== current).sort();
  const nothing = (sentence: string): Comparison => ({
    ...base,
    status: 'nothing to compare',
    sentences: [sentence],
    session: null,
    variance: null,
    arms: others.map((arm) => withoutVerdict(arm, countOf(timed, arm), sentence)),
    trendOverSession: null,
    points: [],
  });
  if (runs.length === 0) return nothing('No runs yet.');
  if (base.counts.voided === runs.length) return nothing('Every run is void: no times are left to compare.');
  if (timed.length === 0) return nothing('No run that counts has a time.');
  if (others.length === 0) return nothing('Only one set-up was ridden: there is nothing to compare it with.');
  if (countOf(timed, current) === 0) return nothing('The current set-up has no timed run that counts.');
  const model = fitRiderMeans(timed, current, request.trend) ?? fitRuns(timed, current, request.trend);
  if (model === null) return nothing('Set-ups, order and sessions cannot be told apart in these runs.');
  return { ...base, status: 'compared', ...judge(request, timed, model, others, base.alpha) };
}

type Judged = Pick<Comparison, 'sentences' | 'session' | 'variance' | 'arms' | 'trendOverSession' | 'points'>;

function judge(
  request: ComparisonRequest,
  timed: readonly TimedRun[],
  model: TimeModel,
  others: readonly string[],
  alpha: number,
): Judged {
  const session = {
    variance: Math.sqrt(model.variance) > TIMER_RESOLUTION ? model.variance : 0,
    df: Math.max(0, model.residualDf),
  };
  // Past sessions hold the scatter of runs; the scatter of rider means is another quantity.
  const variance = moderateVariance(session, model.unit === 'runs' ? request.history : []);
  const whyNot = noTestReasons(request, timed, model, others, variance);
  const tested = model.differences.filter((difference) => !whyNot.has(difference.arm));
  const judged = variance === null ? [] : testAll(request, timed, model, tested, variance, alpha);
  return {
    sentences: sentencesAbout(request, timed, model, variance, session),
    session: model.unit === 'runs' ? session : runScatter(request, timed),
    variance,
    arms: others.map(
      (arm) =>
        judged.find((entry) => entry.arm === arm) ??
        withoutVerdict(
          arm,
          countOf(timed, arm),
          whyNot.get(arm) ?? '',
          model.differences.find((d) => d.arm === arm)?.estimate,
        ),
    ),
    trendOverSession: model.trendOverSession,
    points: model.points,
  };
}

function runScatter(
  { current, trend }: ComparisonRequest,
  timed: readonly TimedRun[],
): SessionVariance | null {
  const within = fitRuns(timed, current, trend);
  return within === null ? null : { variance: within.variance, df: Math.max(0, within.residualDf) };
}

/** Set-ups that no test is possible for, each with its sentence. */
function noTestReasons(
  { current }: ComparisonRequest,
  timed: readonly TimedRun[],
  model: TimeModel,
  others: readonly string[],
  variance: ModeratedVariance | null,
): Map<string, string> {
  const reasons = new Map<string, string>();
  for (const arm of others) {
    const reason = noTestReason(countOf(timed, arm), countOf(timed, current), model, arm, variance);
    if (reason !== null) reasons.set(arm, reason);
  }
  return reasons;
}

function noTestReason(
  runs: number,
  currentRuns: number,
  model: TimeModel,
  arm: string,
  variance: ModeratedVariance | null,
): string | null {
  if (runs === 0) return 'No timed run that counts.';
  if (model.confounded.includes(arm)) {
    return runs < 2
      ? 'One run a set-up: order and set-up cannot be told apart.'
      : 'Ridden only where nothing else was: its times cannot be told from those of the session or from the order.';
  }
  if (variance !== null && (variance.source !== 'this session' || (runs >= 2 && currentRuns >= 2)))
    return null;
  if (runs < 2 || currentRuns < 2) {
    return 'One run a set-up and no history of the scatter between runs: no test is possible.';
  }
  return model.residualDf < 1
    ? 'As many unknowns as runs: nothing is left to judge the scatter by.'
    : 'All times agree to the last digit of the timer: the scatter between runs is not known.';
}

function testAll(
  request: ComparisonRequest,
  timed: readonly TimedRun[],
  model: TimeModel,
  tested: readonly TimeModel['differences'][number][],
  variance: ModeratedVariance,
  alpha: number,
): ArmComparison[] {
  if (tested.length === 0) return [];
  const margin = Math.log1p(request.margin);
  const { df } = variance;
  const ses = tested.map((difference) => Math.sqrt(variance.variance * difference.unscaledVariance));
  const se = (i: number): number => ses[i] as number;
  const pDifference = holmAdjusted(tested.map(({ estimate }, i) => differenceTest(estimate, se(i), df)));
  const pEquivalence = holmAdjusted(
    tested.map(({ estimate }, i) => equivalenceTest(estimate, se(i), df, margin).p),
  );
  const critical = simultaneousCritical(model, tested, df, alpha);
  return tested.map((difference, i) => {
    const { arm, estimate } = difference;
    const needed =
      model.unit === 'rider means'
        ? null
        : runsStillNeeded({
            variance,
            unscaledVariance: difference.unscaledVariance,
            runs: { arm: countOf(timed, arm), current: countOf(timed, request.current) },
            arms: tested.length + 1,
            comparisons: tested.length,
            alpha,
            margin,
          });
    const basis = {
      estimate,
      se: se(i),
      df,
      pDifference: pDifference[i] as number,
      pEquivalence: pEquivalence[i] as number,
      alpha,
      margin,
      borrowed: variance.source !== 'this session',
    };
    const reasoned = verdictOf(basis, needed);
    return {
      ...reasoned,
      arm,
      timedRuns: countOf(timed, arm),
      difference: estimate,
      share: Math.expm1(estimate),
      se: se(i),
      df,
      interval: { low: estimate - critical * se(i), high: estimate + critical * se(i) },
      pDifference: basis.pDifference,
      pEquivalence: basis.pEquivalence,
      needed: reasoned.verdict === 'cannot tell yet' ? needed : null,
    };
  });
}

/** Critical value of the simultaneous intervals: Dunnett's where one factor carries the correlations, else Bonferroni's. */
function simultaneousCritical(
  model: TimeModel,
  tested: readonly TimeModel['differences'][number][],
  df: number,
  alpha: number,
): number {
  const at = tested.map((difference) => model.differences.indexOf(difference));
  const covariance = (i: number, j: number): number =>
    model.covariance[at[i] as number]?.[at[j] as number] as number;
  const correlations = at.map((_, i) =>
    at.map((__, j) => covariance(i, j) / Math.sqrt(covariance(i, i) * covariance(j, j))),
  );
  const { loadings, worstError } = commonFactor(correlations);
  return worstError <= WORST_FACTOR_ERROR
    ? maxTCritical(alpha, loadings, df)
    : tUpperQuantile(alpha / (2 * tested.length), df);
}

function sentencesAbout(
  request: ComparisonRequest,
  timed: readonly TimedRun[],
  model: TimeModel,
  variance: ModeratedVariance | null,
  session: { variance: number; df: number },
): string[] {
  const riders = new Set(timed.map((run) => run.rider)).size;
  const sentences = [
    riders === 1
      ? 'One rider: this holds for this rider, this track and these days.'
      : model.unit === 'rider means'
        ? `Judged by how ${riders} riders differ in what suits them: this holds for riders in general.`
        : `Judged by the scatter between runs: this holds for these ${riders} riders only.`,
  ];
  const untimed = request.runs.filter((run) => !run.voided && run.time === null).length;
  if (untimed > 0)
    sentences.push(`${untimed} run${untimed === 1 ? '' : 's'} without a time count for nothing here.`);
  if (session.df > 0 && session.variance === 0) {
    sentences.push('The times agree to the last digit of the timer: use one that reads finer.');
  }
  if (variance?.source === 'history alone')
    sentences.push("The scatter is the team's own from past sessions alone.");
  if (request.history.length === 0)
    sentences.push('No past sessions: the scatter is judged from these runs alone.');
  return sentences;
}

const countOf = (runs: readonly ComparisonRun[], arm: string): number =>
  runs.filter((run) => run.arm === arm).length;

function withoutVerdict(
  arm: string,
  timedRuns: number,
  sentence: string,
  difference?: number,
): ArmComparison {
  return {
    arm,
    timedRuns,
    difference: difference ?? null,
    share: difference === undefined ? null : Math.expm1(difference),
    se: null,
    df: null,
    interval: null,
    pDifference: null,
    pEquivalence: null,
    verdict: 'no verdict',
    sentence,
    needed: null,
  };
}

function voidCounts(runs: readonly ComparisonRun[], current: string): VoidCount[] {
  const arms = [...new Set(runs.map((run) => run.arm))].sort();
  const of = (arm: string): { voided: number; ridden: number } => {
    const own = runs.filter((run) => run.arm === arm);
    return { voided: own.filter((run) => run.voided).length, ridden: own.length };
  };
  const base = of(current);
  return arms.map((arm) => {
    const own = of(arm);
    const p =
      arm === current || base.ridden === 0
        ? null
        : fisherExact(own.voided, own.ridden - own.voided, base.voided, base.ridden - base.voided);
    return { arm, ...own, p };
  });
}
