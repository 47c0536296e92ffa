import type { EndInputs } from '@loamledger/api/suspension/end-inputs.js';

/**
 * All that passes between a simulated team and whoever advises it. The folders `truth` and `advice` meet here and
 * nowhere else: what is not in these shapes, no adviser knows.
 */

/** What a rider pumps in by the gauge, and the spacers put in. */
export interface SetUp {
  /** Gauge reading, psi. */
  readonly pressure: number;
  readonly spacers: number;
}

/** A fork under its rider: as it was entered, or as it is. */
export interface ForkFigures {
  readonly unit: EndInputs['unit'];
  /** kg. */
  readonly sprungMass: number;
  readonly leverage: EndInputs['leverage'];
  /** psi by the gauge. */
  readonly minPressure: number;
  readonly maxPressure: number;
  readonly maxSpacers: number;
}

/** A run as it is logged. */
export interface LoggedRun {
  readonly riderId: string;
  readonly trackId: string;
  readonly setUp: SetUp;
  /** What the ring showed, m. */
  readonly travelUsed: number;
}

/** A set-up that a rider kept on a track. */
export interface KeptSetUp {
  readonly riderId: string;
  readonly trackId: string;
  readonly setUp: SetUp;
}

/** What the team has written down before the rider starts on the track in question. */
export interface TeamRecords {
  readonly riderId: string;
  readonly trackId: string;
  /** By rider: everybody has one fork. */
  readonly forks: ReadonlyMap<string, ForkFigures>;
  /** By track: altitude, m. */
  readonly altitudes: ReadonlyMap<string, number>;
  readonly pastRuns: readonly LoggedRun[];
  readonly kept: readonly KeptSetUp[];
  /** Travel that the rider has said should be left on the hardest run in twenty, m; null: nothing said. */
  readonly saidReserve: number | null;
  readonly startSetUp: SetUp;
}

/** What an adviser says after some runs. */
interface Advice {
  /** To ride next. */
  readonly next: SetUp;
  /** What it holds to be the right set-up so far; some ride just that, some come to it step by step. */
  readonly best: SetUp;
}

/** Advice after the runs so far on this track, mates' among them: a plain function of what was logged. */
export type Adviser = (runs: readonly LoggedRun[]) => Advice;

/** Sag that the riders want, shares of the stroke: the usual band of a fork, common practice, no source. */
export const SAG_BAND = { min: 0.15, max: 0.2 } as const;
/** Name of the set-up that the others are compared with in every plan. */
export const CURRENT = 'current';
/** A difference of time worth acting on, share: what the tool takes where nothing is said. */
export const MARGIN = 0.01;
/** Standard deviation of a ring reading that the records assume, m. Common practice, no source. */
export const RING_SD = 0.002;
