import { FEWEST_EXACT_READINGS } from './fit.js';
import type { DemandReading } from './reading.js';

/** In words, from most to least direct, what a prediction for one rider on one track rests on. */
export type EvidenceLevelName = 'rider here' | 'team here' | 'rider elsewhere' | 'physics only';

/** Level and counts, with a sentence for the reader. */
export interface EvidenceLevel {
  level: EvidenceLevelName;
  message: string;
  /** Fewer than three exact readings on the track: its level is known only as "at least". */
  lowerBoundOnly: boolean;
  counts: {
    /** This rider on this track. */
    ownHere: number;
    /** Anyone of the team on this track, this rider included. */
    teamHere: number;
    /** This rider on other tracks. */
    ownElsewhere: number;
    /** Kinds of the team's readings on this track. */
    exactHere: number;
    atLeastHere: number;
    atMostHere: number;
    /** All readings of the team. */
    total: number;
  };
}

/**
 * Readings that a level asks for. With two, a 95 % t interval of a mean is ± 9 standard deviations wide, with three
 * ± 2.5 (t quantiles 12.7 and 4.30 over √n): three is the first number at which readings outweigh the prior.
 */
const READINGS_FOR_A_LEVEL = 3;

const WORDS: Record<EvidenceLevelName, string> = {
  'rider here': "This rider's own runs on this track",
  'team here': "The team's runs on this track",
  'rider elsewhere': "This rider's runs on other tracks",
  'physics only': 'No runs that bear on this; physics and prior only',
};

/** What a prediction for a rider on a track rests on, with counts (readings); `readings` are the team's. */
export function evidenceLevel(
  readings: readonly DemandReading[],
  riderId: string,
  trackId: string,
): EvidenceLevel {
  const here = readings.filter((reading) => reading.trackId === trackId);
  const count = (kind: DemandReading['kind']): number =>
    here.filter((reading) => reading.kind === kind).length;
  const counts = {
    ownHere: here.filter((reading) => reading.riderId === riderId).length,
    teamHere: here.length,
    ownElsewhere: readings.filter((reading) => reading.riderId === riderId && reading.trackId !== trackId)
      .length,
    exactHere: count('exact'),
    atLeastHere: count('at-least'),
    atMostHere: count('at-most'),
    total: readings.length,
  };
  const level = levelOf(counts);
  const lowerBoundOnly = counts.exactHere < FEWEST_EXACT_READINGS;
  const bound = lowerBoundOnly
    ? ` Fewer than ${FEWEST_EXACT_READINGS} readings on this track are exact: its hits are known only as "at least".`
    : '';
  return {
    level,
    message: `${WORDS[level]}.${counts.atLeastHere > 0 || level !== 'physics only' ? bound : ''}`,
    lowerBoundOnly,
    counts,
  };
}

function levelOf(counts: EvidenceLevel['counts']): EvidenceLevelName {
  if (counts.ownHere >= READINGS_FOR_A_LEVEL) return 'rider here';
  if (counts.teamHere >= READINGS_FOR_A_LEVEL) return 'team here';
  if (counts.ownElsewhere >= READINGS_FOR_A_LEVEL) return 'rider elsewhere';
  return 'physics only';
}
