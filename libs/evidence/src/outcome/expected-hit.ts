import type { DemandFit } from '../demand/fit.js';
import { predictDemand } from '../demand/predict.js';
import type { RunOf } from '../demand/run-unknowns.js';

/** What is expected of the runs on a set-up, natural logarithm of metres. */
export interface ExpectedHit {
  /** Mean of the log hit height. */
  readonly logMean: number;
  /** Standard deviation of the level that all these runs share. */
  readonly levelSd: number;
  /** Standard deviation between runs at that level. */
  readonly runSd: number;
}

/**
 * Mean, shared and separate standard deviation of the log hit heights of some next runs, log metres.
 *
 * Var(one run) = levelSd² + runSd² over the fit's mixture: runSd² is the mean of its run variances, levelSd² the rest,
 * which any number of runs keeps in common. Throws EvidenceInputError for a fit of another model version.
 */
export function expectedHit(fit: DemandFit, who: RunOf): ExpectedHit {
  const { weights, means, sds } = predictDemand(fit, who);
  const meanOf = (value: (i: number) => number): number =>
    weights.reduce((sum, weight, i) => sum + weight * value(i), 0);
  const logMean = meanOf((i) => means[i] as number);
  const variance = meanOf((i) => (sds[i] as number) ** 2 + ((means[i] as number) - logMean) ** 2);
  const total = fit.components.reduce((sum, { weight }) => sum + weight, 0);
  const runVariance =
    fit.components.reduce((sum, { weight, variances }) => sum + weight * variances.run, 0) / total;
  return {
    logMean,
    levelSd: Math.sqrt(Math.max(0, variance - runVariance)),
    runSd: Math.sqrt(runVariance),
  };
}
