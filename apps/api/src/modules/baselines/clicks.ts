import type { Clicks, KeptEnd } from './kept-set-ups.js';

/** How a changed spring rate asks the rebound to be looked at. */
type ReboundHint = 'leave' | 'try slower' | 'try faster';

/** Clicks to start from, with the set-up they are those of. */
export interface ClicksAdvice {
  readonly clicks: Clicks;
  readonly from: 'kept' | 'now';
  readonly setupId: string;
  readonly rebound: ReboundHint;
}

/** The set-up in the bike now. */
export interface ClicksNow {
  readonly setupId: string;
  readonly clicks: Clicks;
  readonly sagStiffness: number;
}

/** A change of stiffness at sag that asks for another rebound setting, relative. Common practice, no source. */
const NOTICEABLE_STIFFNESS_CHANGE = 0.05;

/**
 * The clicks of the kept set-up of this bike whose spring is nearest in stiffness to the one chosen, else those in the
 * bike now; null where there are neither.
 */
export function clicksFor(
  sagStiffness: number,
  kept: readonly KeptEnd[],
  now: ClicksNow | null,
): ClicksAdvice | null {
  const apart = (other: KeptEnd): number => Math.abs(Math.log(other.sagStiffness / sagStiffness));
  const [nearest] = kept
    .filter(({ clicks }) => clicks.rebound !== null || clicks.compression !== null)
    .toSorted((a, b) => apart(a) - apart(b));
  const start = nearest ?? now;
  if (!start) return null;
  return {
    clicks: start.clicks,
    from: nearest ? 'kept' : 'now',
    setupId: start.setupId,
    rebound: reboundHint(start.sagStiffness, sagStiffness),
  };
}

/** A stiffer spring pushes back harder: the same clicks then let it rebound faster. */
function reboundHint(from: number, to: number): ReboundHint {
  const change = to / from - 1;
  if (Math.abs(change) < NOTICEABLE_STIFFNESS_CHANGE) return 'leave';
  return change > 0 ? 'try slower' : 'try faster';
}
