import { compareSetUps, sessionVariances, type Comparison } from '@loamledger/evidence';
import type { ClosedPlan } from '../comparisons/closed-plans.js';
import { currentLetter } from '../comparisons/compared.js';

/** Two set-ups of a bike that a closed plan on the track has told apart on time. */
export interface TimeVerdict {
  readonly planId: string;
  readonly planName: string;
  readonly bikeId: string;
  readonly fasterSetupId: string;
  readonly slowerSetupId: string;
  /** By how much less time the faster takes, of the time, with its interval; positive. */
  readonly gain: { readonly by: number; readonly low: number; readonly high: number };
}

/** The verdicts 'faster' and 'slower' of closed plans, for every bike that rode in them. */
export function timeVerdicts(plans: readonly ClosedPlan[]): TimeVerdict[] {
  return plans.flatMap(({ plan, wish: { pastRuns, ...request } }) => {
    const { arms } = compareSetUps({ ...request, history: sessionVariances(pastRuns) });
    return arms.flatMap((arm) => verdictsOf(plan, arm));
  });
}

function verdictsOf({ row, arms }: ClosedPlan['plan'], compared: Comparison['arms'][number]): TimeVerdict[] {
  const { verdict, difference, interval } = compared;
  if ((verdict !== 'faster' && verdict !== 'slower') || difference === null || interval === null) return [];
  const isFaster = verdict === 'faster';
  const setupOf = (bikeId: string, letter: string) =>
    arms.find((arm) => arm.bikeId === bikeId && arm.letter === letter)?.setupId;
  // Differences are of the logarithm of time, the arm less the current one.
  const ends = [difference, interval.low, interval.high].map((log) => -Math.expm1(isFaster ? log : -log));
  const [by = 0, ...bounds] = ends;
  return [...new Set(arms.map(({ bikeId }) => bikeId))].flatMap((bikeId) => {
    const tried = setupOf(bikeId, compared.arm);
    const current = setupOf(bikeId, currentLetter({ arms }));
    if (!tried || !current) return [];
    return [
      {
        planId: row.id,
        planName: row.name,
        bikeId,
        fasterSetupId: isFaster ? tried : current,
        slowerSetupId: isFaster ? current : tried,
        gain: { by, low: Math.min(...bounds), high: Math.max(...bounds) },
      },
    ];
  });
}
