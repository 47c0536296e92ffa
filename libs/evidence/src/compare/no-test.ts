import { countOf } from './arm-comparison.js';
import type { ComparisonRequest } from './comparison-request.js';
import type { ModeratedVariance } from './moderated-variance.js';
import type { TimedRun, TimeModel } from './time-model.js';

/** Set-ups that no test is possible for, each with its sentence. */
export function noTestReasons(
  { current }: ComparisonRequest,
  timed: readonly TimedRun[],
  model: TimeModel,
  others: readonly string[],
  variance: ModeratedVariance | null,
): Map<string, string> {
  const reasons = new Map<string, string>();
  for (const arm of others) {
    const alias = aliasOf(timed, arm);
    const reason = noTestReason(countOf(timed, arm), countOf(timed, current), model, arm, alias, variance);
    if (reason !== null) reasons.set(arm, reason);
  }
  return reasons;
}

/** What the times of a set-up cannot be told from: who rode it, when, or at which place. */
function aliasOf(timed: readonly TimedRun[], arm: string): string {
  const own = timed.filter((run) => run.arm === arm);
  const others = timed.filter((run) => run.arm !== arm);
  const shares = (of: (run: TimedRun) => string): boolean =>
    own.some((run) => others.some((other) => of(other) === of(run)));
  if (!shares(({ rider }) => rider))
    return 'Who rode it rode nothing else: its times cannot be told from those of the rider.';
  if (!shares(({ rider, session }) => `${rider}\u0000${session}`))
    return 'Ridden only in sessions where nothing else was: its times cannot be told from those of the session.';
  return 'Ridden only where nothing else was: its times cannot be told from the order.';
}

function noTestReason(
  runs: number,
  currentRuns: number,
  model: TimeModel,
  arm: string,
  alias: string,
  variance: ModeratedVariance | null,
): string | null {
  if (runs === 0) return 'No timed run that counts.';
  if (model.confounded.includes(arm)) {
    return runs < 2 ? 'One run a set-up: order and set-up cannot be told apart.' : alias;
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
