import { EvidenceInputError } from '../errors.js';
import { mixtureOf } from './component.js';
import type { DemandFit } from './fit.js';
import { mixtureQuantile, mixtureUpperTail, type NormalMixture } from './mixture.js';
import { DEMAND_MODEL_VERSION } from './reading.js';

/** Log hit height of the biggest hit of a new run (natural log of metres), reading error excluded. */
export type PredictiveDistribution = NormalMixture;

/**
 * Distribution of the log hit height of a new run, in log metres.
 *
 * mu + track + rider + run over the fit's mixture; a rider or track that is missing or unknown to the fit
 * contributes a fresh draw with the variance of its kind, so the distribution is wider.
 * Throws EvidenceInputError for a fit of another model version.
 */
export function predictDemand(
  fit: DemandFit,
  who: { riderId?: string; trackId?: string },
): PredictiveDistribution {
  if (fit.modelVersion !== DEMAND_MODEL_VERSION) {
    throw new EvidenceInputError('fit.modelVersion', fit.modelVersion, 'version', DEMAND_MODEL_VERSION);
  }
  const track = fit.tracks.findIndex(({ id }) => id === who.trackId);
  const rider = fit.riders.findIndex(({ id }) => id === who.riderId);
  const known = [0];
  if (track >= 0) known.push(1 + track);
  if (rider >= 0) known.push(1 + fit.tracks.length + rider);
  return mixtureOf(
    fit.components,
    known,
    track,
    ({ variances }) => variances.run + (track < 0 ? variances.track : 0) + (rider < 0 ? variances.rider : 0),
  );
}

/** Log hit height (log metres) that a new run stays below with probability p, 0 < p < 1. */
export const predictiveQuantile = (distribution: PredictiveDistribution, p: number): number =>
  mixtureQuantile(distribution, p);

/** Probability that a new run's log hit height exceeds `logHeight` (log metres), dimensionless; ±Infinity give 0 and 1. */
export const exceedance = (distribution: PredictiveDistribution, logHeight: number): number =>
  mixtureUpperTail(distribution, logHeight);
