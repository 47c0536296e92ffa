import { countOf, withoutVerdict, type ArmComparison } from './arm-comparison.js';
import { requireComparison, type ComparisonRequest } from './comparison-request.js';
import { levelAtLook, type Look } from './look-levels.js';
import { moderateVariance, type ModeratedVariance, type SessionVariance } from './moderated-variance.js';
import { noTestReasons } from './no-test.js';
import { sessionVariance } from './session-scatter.js';
import { testArms, type Levels } from './test-arms.js';
import { fitRiderMeans, fitRuns, type TimedRun, type TimeModel } from './time-model.js';
import { voidCounts, type VoidCount } from './void-count.js';

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
/**
 * Compares set-ups with the current one on log time; differences are shares of time on the log scale.
 *
 * log time = arm + order trend + rider and session levels, ordinary least squares; with three riders or more who rode
 * every arm equally often, on rider means instead. Scatter moderated by history (smyth2004), Holm over the set-ups
 * (holm1979), equivalence by two one-sided tests (schuirmann1987), α spent over looks. docs/evidence/comparison.md.
 * `among`: comparisons that P values are to be corrected for afterwards, this one included; it lowers the level of a look.
 * Every degenerate case is a status with a sentence, never an exception; impossible input throws EvidenceInputError.
 */
export function compareSetUps(request: ComparisonRequest, among = 1): Comparison {
  requireComparison(request);
  const { runs, current, look } = request;
  const timed = runs.filter((run): run is TimedRun => !run.voided && run.time !== null);
  const others = [...new Set(runs.map((run) => run.arm))].filter((arm) => arm !== current).sort();
  const levelOf = (at: Look | null): number =>
    at === null ? ALPHA : levelAtLook(ALPHA, at, Math.max(1, others.length) * among);
  const base = {
    counts: {
      runs: runs.length,
      voided: runs.filter((run) => run.voided).length,
      untimed: runs.filter((run) => !run.voided && run.time === null).length,
      timed: timed.length,
    },
    alpha: levelOf(look),
    voids: voidCounts(runs, current),
  };
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
  // What is still to be ridden is judged in the end, not at this look.
  const levels = {
    now: base.alpha,
    end: levelOf(look && (look.of === null ? look : { ...look, number: look.of })),
  };
  return { ...base, status: 'compared', ...judge(request, timed, model, others, levels) };
}

type Judged = Pick<Comparison, 'sentences' | 'session' | 'variance' | 'arms' | 'trendOverSession' | 'points'>;

function judge(
  request: ComparisonRequest,
  timed: readonly TimedRun[],
  model: TimeModel,
  others: readonly string[],
  levels: Levels,
): Judged {
  const session = sessionVariance(model.variance, model.residualDf);
  // Past sessions hold the scatter of runs; the scatter of rider means is another quantity.
  const variance = moderateVariance(session, model.unit === 'runs' ? request.history : []);
  const whyNot = noTestReasons(request, timed, model, others, variance);
  const tested = model.differences.filter((difference) => !whyNot.has(difference.arm));
  const judged = variance === null ? [] : testArms(request, timed, model, tested, variance, levels);
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
