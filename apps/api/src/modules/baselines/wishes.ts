import {
  learnPreferences,
  preferredSagBand,
  reservePrior,
  sagPrior,
  type KeptValue,
  type Preference,
} from '@loamledger/evidence';
import type { Rider } from '../riders/riders.service.js';
import { USUAL_WISHES } from '../riders/usual-wishes.js';
import type { End } from '../suspension/end-inputs.js';
import type { KeptEnd } from './kept-set-ups.js';

export const WISH_SOURCES = ['entered', 'this rider', 'the team', 'usual'] as const;
/** Whose wish it is: entered for the rider, learned from what was kept, or the trade's where nobody said anything. */
export type WishSource = (typeof WISH_SOURCES)[number];

/** A wish with what it rests on. */
export interface Wish<Value> {
  readonly value: Value;
  readonly source: WishSource;
  /** Kept decisions of this rider, and of the whole team. */
  readonly own: number;
  readonly team: number;
}

/** What a rider wants of one end; shares of the stroke. */
export interface EndWishes {
  readonly sagBand: Wish<{ min: number; max: number }>;
  readonly reserve: Wish<number>;
  /** What the rider's kept set-ups leave at the 95th-percentile hit, pooled; null where none was kept. */
  readonly keptReserve: number | null;
  readonly acceptedRisk: number;
}

/** Preferences learned from the kept set-ups of a team, of every rider; null where nothing was kept. */
export interface LearnedWishes {
  readonly reserve: ((riderId: string) => Preference) | null;
  readonly sag: ((riderId: string) => Preference) | null;
}

const PER_CENT = 100;
/** A wish is stored as a share and entered in per cent: what differs by less was not entered. */
const ROUNDING = 1e-9;

const usualOf = (end: End) => {
  const { sagLowPct, sagHighPct, reservePct } = USUAL_WISHES[end];
  return {
    band: { min: sagLowPct / PER_CENT, max: sagHighPct / PER_CENT },
    reserve: reservePct / PER_CENT,
  };
};

/** Learns once for all riders: kept set-ups of the team at one end. */
export function learnWishes(end: End, kept: readonly KeptEnd[]): LearnedWishes {
  const usual = usualOf(end);
  const reserves = kept.flatMap(({ riderId, reserve }): KeptValue[] =>
    reserve === null ? [] : [{ riderId, value: reserve }],
  );
  const sags = kept.map(({ riderId, sag }) => ({ riderId, value: sag }));
  return {
    reserve: reserves.length === 0 ? null : learnPreferences(reserves, reservePrior(usual.reserve)),
    sag: sags.length === 0 ? null : learnPreferences(sags, sagPrior(usual.band)),
  };
}

/**
 * A wish that was entered holds as it was entered. The usual one gives way to what was kept: the reserve from the first
 * kept decision of the team on, the sag band from the rider's own third.
 */
export function wishesOf(end: End, rider: Rider, learned: LearnedWishes): EndWishes {
  const isFork = end === 'fork';
  const band = isFork
    ? { min: rider.forkSagLow, max: rider.forkSagHigh }
    : { min: rider.shockSagLow, max: rider.shockSagHigh };
  const reserve = isFork ? rider.forkReserve : rider.shockReserve;
  const keptReserve = learned.reserve?.(rider.id) ?? null;
  return {
    sagBand: sagWish(band, usualOf(end).band, learned.sag?.(rider.id) ?? null),
    reserve: reserveWish(reserve, usualOf(end).reserve, keptReserve),
    keptReserve: keptReserve && keptReserve.counts.own > 0 ? keptReserve.mean : null,
    acceptedRisk: rider.acceptedRisk,
  };
}

const isSame = (a: number, b: number) => Math.abs(a - b) < ROUNDING;

function reserveWish(entered: number, usual: number, kept: Preference | null): Wish<number> {
  const counts = kept?.counts ?? { own: 0, team: 0 };
  if (!isSame(entered, usual)) return { value: entered, source: 'entered', ...counts };
  if (!kept || kept.source === 'default') return { value: usual, source: 'usual', ...counts };
  return { value: Math.max(0, kept.mean), source: kept.source, ...counts };
}

function sagWish(
  entered: { min: number; max: number },
  usual: { min: number; max: number },
  kept: Preference | null,
): EndWishes['sagBand'] {
  const counts = kept?.counts ?? { own: 0, team: 0 };
  if (!isSame(entered.min, usual.min) || !isSame(entered.max, usual.max)) {
    return { value: entered, source: 'entered', ...counts };
  }
  const value = kept ? preferredSagBand(kept, usual) : usual;
  return { value, source: isSame(value.min, usual.min) ? 'usual' : 'this rider', ...counts };
}
