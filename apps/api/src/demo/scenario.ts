import type { EndSetupInputDto } from '../modules/setups/setups.dto.js';
import type { SessionInputDto } from '../modules/sessions/sessions.dto.js';
import type { BikeKey } from './bikes.js';
import type { TrackKey } from './tracks.js';

/** A new set-up of a bike. */
export interface SetUpChange {
  readonly bike: BikeKey;
  readonly reason: string;
  readonly fork: EndSetupInputDto;
  readonly shock: EndSetupInputDto;
  /** The track it is meant for. */
  readonly track?: TrackKey;
  /** Pumped in the team's workshop rather than at the track. */
  readonly inWorkshop?: boolean;
  /** Tried at the workbench first: the decision keeps what was expected. Each asks for a fit of all readings so far. */
  readonly atWorkbench?: true;
}

/** A change that is taken back: the bike gets an earlier revision again. */
export interface SetUpReturn {
  readonly bike: BikeKey;
  readonly reason: string;
  readonly backToRevision: number;
}

/** Runs of one bike in a row. */
export interface Stint {
  readonly bike: BikeKey;
  readonly runs: number;
  /** The first so many were shuttle runs without a clock. */
  readonly untimed?: number;
}

/** A day of the season on a track. */
export interface DemoDay {
  readonly track: TrackKey;
  readonly weather: Omit<SessionInputDto, 'trackId'>;
  /** Made before the first run. */
  readonly changes: readonly (SetUpChange | SetUpReturn)[];
  readonly stints: readonly Stint[];
  /** Open decisions that were kept after the last run. */
  readonly kept: readonly { readonly bike: BikeKey; readonly note: string }[];
}

/** Where set-ups marked `inWorkshop` are pumped. */
export const WORKSHOP = { altitudeM: 380, temperatureC: 20 } as const;

/** One end of a set-up. */
export const end = (
  pressurePsi: number,
  spacers: number,
  reboundClicks: number,
  compressionClicks: number,
): EndSetupInputDto => ({ pressurePsi, spacers, reboundClicks, compressionClicks });
