import type { Bench } from './bench.js';
import { isSameFill, type Fill } from './fill.js';
import { sceneOf, tried } from './mount.js';
import { reboundFor, type Rebound } from './rebound.js';
import { tradedSpacers, tradeFor, type Trade } from './spacer-trade.js';
import {
  intervalsOf,
  intervalsOfChange,
  uncertainView,
  type Intervals,
  type UncertainView,
} from './uncertainty.js';

/*
 * What takes too long for the frame of a press and is told in the frame after. Null where the engine refuses: the
 * figures themselves then say why.
 */

const orNull = <Answer>(ask: () => Answer): Answer | null => {
  const answer = tried(ask);
  return answer.status === 'answered' ? answer.answer : null;
};

/** What is in it now, with its uncertainties: kept for as long as that is in it. */
export const uncertainNow = ({ mount, now, question, end }: Bench): UncertainView =>
  uncertainView(sceneOf(mount, now.fill), question, end.uncertainty);

export interface Uncertainty {
  /** Of the proposed set-up's figures. */
  readonly figures: Intervals;
  /** Of their changes from now. */
  readonly changes: Intervals;
}

/** How well the figures of a proposal, and their changes from now, are known. */
export function uncertaintyAt(bench: Bench, before: UncertainView, fill: Fill): Uncertainty | null {
  const { mount, question, end } = bench;
  const after = isSameFill(bench.now.fill, fill)
    ? before
    : uncertainView(sceneOf(mount, fill), question, end.uncertainty);
  return orNull(() => ({ figures: intervalsOf(after), changes: intervalsOfChange(before, after) }));
}

/** Which way to look for rebound with a proposal. */
export const reboundAt = ({ mount, now }: Bench, fill: Fill): Rebound =>
  orNull(() => reboundFor(mount, now.fill, fill));

/** The spacer trade around what is in it now, for the proposed spacer count. */
export function tradeAt({ mount, now, end }: Bench, spacers: number): Trade | null {
  const to = tradedSpacers(now.fill.spacers, spacers, mount.unit.maxSpacers);
  return orNull(() => tradeFor(mount, now.fill, to, end.forecast?.p95M));
}
