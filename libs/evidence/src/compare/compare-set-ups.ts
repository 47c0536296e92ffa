import { countOf, withoutVerdict, type ArmComparison } from './arm-comparison.js';
import { requireComparison, type ComparisonRequest } from './comparison-request.js';
import { levelAtLook, type Look } from './look-levels.js';
import {
  historyShortfall,
  moderateVariance,
  type ModeratedVariance,
  type SessionVariance,
} from './moderated-variance.js';
import { judgeRiders } from './judge-riders.js';
import { judgeTheseRiders } from './judge-these-riders.js';
import { fitRiders } from './rider-model.js';
import { sessionVariance } from './session-scatter.js';
import type { Levels } from './test-arms.js';
import { fitRuns, type TimedRun, type TimeModel } from './time-model.js';
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
  /** Scatter between runs that the tests used; for riders in general, that of a rider's runs on one set-up. */
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
 * log time = arm + order trend + rider and session levels. One rider: ordinary least squares, scatter moderated by
 * history (smyth2004). Several, balanced or not: what an arm does for each rider is random, the verdict is for riders in
 * general (kenward1997), and where there are too few riders for one, a reading for these riders only stands behind it.
 * Holm over the set-ups (holm1979), equivalence by two one-sided tests (schuirmann1987), α spent over looks.
 * docs/evidence/comparison.md.
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
  const model = fitRuns(timed, current, request.trend);
  if (model === null)
    return nothing('Set-ups, riders, sessions and order cannot be told apart in these runs.');
  // What is still to be ridden is judged in the end, not at this look.
  const levels = {
    now: base.alpha,
    end: levelOf(look && (look.of === null ? look : { ...look, number: look.of })),
  };
  return { ...base, status: 'compared', ...judge(request, timed, model, others, levels, among) };
}

type Judged = Pick<Comparison, 'sentences' | 'session' | 'variance' | 'arms' | 'trendOverSession' | 'points'>;

function judge(
  request: ComparisonRequest,
  timed: readonly TimedRun[],
  model: TimeModel,
  others: readonly string[],
  levels: Levels,
  among: number,
): Judged {
  const session = sessionVariance(model.variance, model.residualDf);
  const moderated = moderateVariance(session, request.history);
  const riders = new Set(timed.map((run) => run.rider)).size;
  const base = { session, trendOverSession: model.trendOverSession, points: model.points };
  if (riders === 1) {
    return {
      ...base,
      variance: moderated,
      arms: judgeTheseRiders(request, timed, model, moderated, others, levels, true),
      sentences: sentencesAbout(request, riders, moderated, session),
    };
  }
  // A reading has no P value that could be multiplied afterwards: its level is shared instead.
  const shared = { now: levels.now / among, end: levels.end / among };
  const these = judgeTheseRiders(request, timed, model, moderated, others, shared, false);
  const general = session.variance > 0 ? fitRiders(timed, request.current, request.trend) : null;
  const variance: ModeratedVariance | null = general && {
    variance: general.variance,
    df: general.df,
    source: 'this session',
  };
  return {
    ...base,
    variance: variance ?? moderated,
    arms: judgeRiders(request, timed, general, these, levels),
    sentences: sentencesAbout(request, riders, variance ?? moderated, session),
  };
}

function sentencesAbout(
  request: ComparisonRequest,
  riders: number,
  variance: ModeratedVariance | null,
  session: SessionVariance,
): string[] {
  const sentences = [
    riders === 1
      ? 'One rider: this holds for this rider, this track and these days.'
      : `Judged by how ${riders} riders differ in what suits them: verdicts are for riders in general.`,
  ];
  const untimed = request.runs.filter((run) => !run.voided && run.time === null).length;
  if (untimed > 0)
    sentences.push(`${untimed} run${untimed === 1 ? '' : 's'} without a time count for nothing here.`);
  if (session.df > 0 && session.variance === 0) {
    sentences.push('The times agree to the last digit of the timer: use one that reads finer.');
  }
  if (variance?.source === 'history alone')
    sentences.push("The scatter is the team's own from past sessions alone.");
  const short = historyShortfall(request.history);
  return short === null ? sentences : [...sentences, short];
}
