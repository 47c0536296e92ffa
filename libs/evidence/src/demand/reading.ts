import { EvidenceInputError, requireFinite, requireNotNegative, requirePositive } from '../errors.js';

/** Version of model and method; a stored fit of another version is refitted before it is used. */
export const DEMAND_MODEL_VERSION = 'demand-5';

/**
 * How a ring reading bounds the hit: a value, a lower bound (the unit used its full travel), or an upper bound
 * (the ring never left the travel that the rider's weight alone uses).
 */
export type ReadingKind = 'exact' | 'at-least' | 'at-most';

/** The biggest hit of one run, read from one ring. */
export interface DemandReading {
  riderId: string;
  trackId: string;
  /** Natural logarithm of the hit height in metres; the limit itself for a bound. */
  logHeight: number;
  kind: ReadingKind;
  /** Standard deviation of the reading error on the log scale, ≥ 0. */
  readingSd: number;
  /** Ground of the run; left out means the reference condition. */
  condition?: string;
}

/** The ground that track levels are given for. */
export const REFERENCE_CONDITION = 'dry';

/**
 * Prior sd of the effect of another ground, log metres: wet or muddy ground changes speed by some 7 %, and hits with
 * its square (judgement, no source). It is not estimated: a team has four or five kinds of ground.
 */
export const CONDITION_SD = 0.15;

/** Prior of the demand model, in log metres: mu normal, the four standard deviations half-normal. */
export interface DemandPriors {
  muMean: number;
  muSd: number;
  trackSdScale: number;
  riderSdScale: number;
  riderOnTrackSdScale: number;
  runSdScale: number;
}

/**
 * Weak priors for a team with no history, log metres.
 *
 * exp(−0.7) = 0.5 m: the biggest hit of an ordinary run compares with a drop to flat of half a metre, and a
 * standard deviation of 1 leaves 0.07–3.6 m within two of them. Scales: tracks differ by a factor exp(0.5) = 1.6
 * or so, riders and runs by exp(0.3) = 1.35, and how a track suits one rider more than another by half as much on the
 * log scale; half-normals keep a component near 0 possible and a factor of five improbable (gelman2006 for the family;
 * the scales are judgement, no source).
 */
export const DEFAULT_DEMAND_PRIORS: DemandPriors = {
  muMean: -0.7,
  muSd: 1,
  trackSdScale: 0.5,
  riderSdScale: 0.3,
  riderOnTrackSdScale: 0.15,
  runSdScale: 0.3,
};

/** Standard deviations that are known beforehand, log metres, ≥ 0; a missing one is estimated. */
export interface FixedSds {
  track?: number;
  rider?: number;
  riderOnTrack?: number;
  run?: number;
}

/** Throws EvidenceInputError unless the priors are finite and their scales above 0. */
export function requirePriors(priors: DemandPriors): void {
  requireFinite('priors.muMean', priors.muMean, 'log m');
  requirePositive('priors.muSd', priors.muSd, 'log m');
  requirePositive('priors.trackSdScale', priors.trackSdScale, 'log m');
  requirePositive('priors.riderSdScale', priors.riderSdScale, 'log m');
  requirePositive('priors.riderOnTrackSdScale', priors.riderOnTrackSdScale, 'log m');
  requirePositive('priors.runSdScale', priors.runSdScale, 'log m');
}

/** Throws EvidenceInputError unless every reading is one that the model can take. */
export function requireReadings(readings: readonly DemandReading[], fixedSds: FixedSds): void {
  for (const [name, sd] of Object.entries(fixedSds)) requireNotNegative(`fixedSds.${name}`, sd, 'log m');
  for (const [i, reading] of readings.entries()) {
    requireFinite(`readings[${i}].logHeight`, reading.logHeight, 'log m');
    requireNotNegative(`readings[${i}].readingSd`, reading.readingSd, 'log m');
    if (fixedSds.run === 0 && reading.readingSd === 0) {
      throw new EvidenceInputError(
        `readings[${i}].readingSd`,
        0,
        'log m',
        '> 0 when the run sd is fixed at 0',
      );
    }
  }
}
