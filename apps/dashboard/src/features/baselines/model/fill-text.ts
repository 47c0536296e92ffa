import { pressureText } from '../../../shared/format/numbers.js';
import type { Baseline, EvaluatedFill } from '../../../shared/http/reads/baselines.js';

/** A set-up of one end under a heading that says what the second figure counts: 68 psi · 3. */
export function shortFillText(fill: EvaluatedFill): string {
  return `${pressureText(fill.pressurePsi)} · ${fill.spacers}`;
}

/** Pressures closer than this are the same to any gauge, psi. */
const SAME_PRESSURE_PSI = 0.5;

function differ(now: EvaluatedFill | null, wanted: EvaluatedFill | null): boolean {
  if (wanted === null) return false;
  if (now === null) return true;
  return (
    now.spacers !== wanted.spacers || Math.abs(now.pressurePsi - wanted.pressurePsi) >= SAME_PRESSURE_PSI
  );
}

/** Whether there is something to take: a recommendation that is not in the bike already. */
export function canBeTaken({ fork, shock }: Baseline): boolean {
  return (
    differ(fork.current, fork.recommended) || (shock !== null && differ(shock.current, shock.recommended))
  );
}

/** Whether everything that is recommended is in the bike already; not so where nothing is. */
export const isInBike = (baseline: Baseline): boolean =>
  !canBeTaken(baseline) && [baseline.fork, baseline.shock].some((end) => end?.recommended != null);

/** Whether one end of the way is more than a single step. */
export const hasSteps = ({ fork, shock }: Baseline): boolean =>
  fork.steps.length > 1 || (shock?.steps.length ?? 0) > 1;
