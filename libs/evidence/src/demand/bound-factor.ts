import { curvatureOfLogNormalCdf, logNormalCdf, slopeOfLogNormalCdf } from '../numerics/normal.js';

/** A reading that only bounds the hit: Φ(side·(η − limit)/√variance), η the level of its cell. */
export interface Bound {
  /** Log metres, counted from the prior mean of mu. */
  limit: number;
  /** Of run and reading error together, (log m)². */
  variance: number;
  /** 1 for a lower bound, −1 for an upper bound. */
  side: number;
}

/** Gaussian factors exp(shift·η − ½ precision·η²) that stand for the bounds, in the order of the design. */
export interface BoundFactors {
  precision: Float64Array;
  shift: Float64Array;
}

/**
 * Factor that gives the rest (natural parameters, (log m)⁻² and (log m)⁻¹) times the bound its mean and variance;
 * equation D4.
 */
export function matchedFactor(
  bound: Bound,
  restPrecision: number,
  restShift: number,
): { precision: number; shift: number } {
  const restVariance = 1 / restPrecision;
  const restMean = restShift * restVariance;
  const spread = bound.variance + restVariance;
  const root = Math.sqrt(spread);
  const z = (bound.side * (restMean - bound.limit)) / root;
  const slope = slopeOfLogNormalCdf(z);
  // Second derivative of log Z towards the rest's mean, seen through a Gaussian factor.
  const bend = curvatureOfLogNormalCdf(z, slope) / spread;
  const precision = bend / (1 - bend * restVariance);
  const pull = (bound.side * slope) / root;
  return { precision, shift: pull * (1 + precision * restVariance) + precision * restMean };
}

/**
 * log of the mean of bound ÷ factor under N(mean, variance), dimensionless; equation D5.
 * 0 where the factor is sharper than the distribution, which no converged solution has.
 */
export function logBoundOverFactor(
  bound: Bound,
  mean: number,
  variance: number,
  precision: number,
  shift: number,
): number {
  const left = 1 - precision * variance;
  if (!(left > 0)) return 0;
  const restMean = (mean - shift * variance) / left;
  const z = (bound.side * (restMean - bound.limit)) / Math.sqrt(bound.variance + variance / left);
  const exponent = (0.5 * precision * mean * mean - shift * mean + 0.5 * shift * shift * variance) / left;
  return logNormalCdf(z).value + exponent - 0.5 * Math.log(left);
}
