import {
  expectedHit,
  predictDemand,
  predictiveQuantile,
  type DemandFit,
  type ExpectedHit,
  type RunOf,
} from '@loamledger/evidence';

/** Percentiles of the hit height of a next run, m. */
export interface HitForecast {
  readonly p05: number;
  readonly median: number;
  readonly p95: number;
  /** What later runs are held against. */
  readonly hit: ExpectedHit;
}

/** Named percentiles of the predictive distribution. */
const FIFTH = 0.05;
const MEDIAN = 0.5;
const NINETY_FIFTH = 0.95;

/** The forecast of a run; without a rider for somebody who was never seen, without a ground for the reference one. */
export function hitForecast(fit: DemandFit, who: RunOf): HitForecast {
  const predictive = predictDemand(fit, who);
  const at = (probability: number) => Math.exp(predictiveQuantile(predictive, probability));
  return { p05: at(FIFTH), median: at(MEDIAN), p95: at(NINETY_FIFTH), hit: expectedHit(fit, who) };
}
