import { EvidenceInputError } from '../errors.js';
import { mixtureOf } from './component.js';
import { unknownsOfRun, type RunOf } from './run-unknowns.js';
import type { DemandFit } from './fit.js';
import { mixtureQuantile, mixtureUpperTail, type NormalMixture } from './mixture.js';
import { CONDITION_SD, DEMAND_MODEL_VERSION } from './reading.js';

/** Log hit height of the biggest hit of a new run (natural log of metres), reading error excluded. */
export type PredictiveDistribution = NormalMixture;

/**
 * Distribution of the log hit height of a new run, in log metres.
 *
 * mu + track + rider + rider-on-track + condition + run over the fit's mixture; a rider, a track, a rider on a track or
 * a ground that is unknown to the fit contributes a fresh draw with the variance of its kind, so the distribution is
 * wider.
 * Throws EvidenceInputError for a fit of another model version.
 */
export function predictDemand(fit: DemandFit, who: RunOf): PredictiveDistribution {
  if (fit.modelVersion !== DEMAND_MODEL_VERSION) {
    throw new EvidenceInputError('fit.modelVersion', fit.modelVersion, 'version', DEMAND_MODEL_VERSION);
  }
  const run = unknownsOfRun(fit, who);
  const { unseen } = run;
  return mixtureOf(
    fit.components,
    run,
    ({ variances }) =>
      variances.run +
      (unseen.track ? variances.track : 0) +
      (unseen.rider ? variances.rider : 0) +
      (unseen.riderOnTrack ? variances.riderOnTrack : 0) +
      (unseen.condition ? CONDITION_SD ** 2 : 0),
  );
}

/** Log hit height (log metres) that a new run stays below with probability p, 0 < p < 1. */
export const predictiveQuantile = (distribution: PredictiveDistribution, p: number): number =>
  mixtureQuantile(distribution, p);

/** Probability that a new run's log hit height exceeds `logHeight` (log metres), dimensionless; ±Infinity give 0 and 1. */
export const exceedance = (distribution: PredictiveDistribution, logHeight: number): number =>
  mixtureUpperTail(distribution, logHeight);
