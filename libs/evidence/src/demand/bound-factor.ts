import { curvatureOfLogNormalCdf, slopeOfLogNormalCdf, valueOfLogNormalCdf } from '../numerics/normal.js';
import type { BoundedCell } from './design.js';

/** The rows `first` … `last` − 1. */
type RowsOfCell = Pick<BoundedCell, 'first' | 'last'>;

/** Readings that only bound the hit, one a row: Φ(side·(η − limit)/√variance), η the level of the row's cell. */
export interface BoundRows {
  /** Log metres, counted from the prior mean of mu. */
  readonly limit: Float64Array;
  /** Of run and reading error together, (log m)². */
  readonly variance: Float64Array;
  /** 1 for a lower bound, −1 for an upper bound. */
  readonly side: Int8Array;
}

/** Gaussian factors exp(shift·η − ½ precision·η²) that stand for the bounds, in the order of the design. */
export interface BoundFactors {
  precision: Float64Array;
  shift: Float64Array;
}

/** Factors that say nothing yet, one a bound. */
export const noFactors = (count: number): BoundFactors => ({
  precision: new Float64Array(count),
  shift: new Float64Array(count),
});

/** Takes a bound's factor that guesses and mixtures have left with less than no precision for one with none. */
export function precisionAtLeast0({ precision }: BoundFactors): void {
  for (let j = 0; j < precision.length; j += 1) precision[j] = Math.max(0, precision[j] as number);
}

/**
 * Moves the factors of the bounds of one cell, one after another, to those that match: the rest times such a factor has
 * the mean and variance of the rest times the bound; equation D4. `mean` (log m) and `variance` ((log m)²) are those of
 * the cell's level, all factors included.
 * Returns how far the cell moves: the change of its mean in its sd or of its sd relative to it, whichever is greater.
 */
export function moveFactors(
  bounds: BoundRows,
  factors: BoundFactors,
  { first, last }: RowsOfCell,
  mean: number,
  variance: number,
): number {
  let precisionNow = 1 / variance;
  let shiftNow = mean / variance;
  for (let j = first; j < last; j += 1) {
    const precision = factors.precision[j] as number;
    const shift = factors.shift[j] as number;
    const restPrecision = precisionNow - precision;
    if (!(restPrecision > 0)) continue;
    const restVariance = 1 / restPrecision;
    const restMean = (shiftNow - shift) * restVariance;
    const side = bounds.side[j] as number;
    const spread = (bounds.variance[j] as number) + restVariance;
    const root = Math.sqrt(spread);
    const z = (side * (restMean - (bounds.limit[j] as number))) / root;
    const slope = slopeOfLogNormalCdf(z);
    // Second derivative of log Z towards the rest's mean, seen through a Gaussian factor.
    const bend = curvatureOfLogNormalCdf(z, slope) / spread;
    const matched = bend / (1 - bend * restVariance);
    const matchedShift = ((side * slope) / root) * (1 + matched * restVariance) + matched * restMean;
    factors.precision[j] = matched;
    factors.shift[j] = matchedShift;
    precisionNow += matched - precision;
    shiftNow += matchedShift - shift;
  }
  const meanChange = Math.abs(shiftNow / precisionNow - mean) / Math.sqrt(variance);
  const sdChange = 0.5 * Math.abs(precisionNow * variance - 1);
  return Math.max(meanChange, sdChange);
}

/**
 * log of the mean of bound ÷ factor under N(mean, variance), dimensionless, added up over the rows of one cell;
 * equation D5. 0 for a factor that is sharper than the distribution, which no converged solution has.
 */
export function logBoundsOverFactors(
  bounds: BoundRows,
  factors: BoundFactors,
  { first, last }: RowsOfCell,
  mean: number,
  variance: number,
): number {
  let sum = 0;
  for (let j = first; j < last; j += 1) {
    const precision = factors.precision[j] as number;
    const shift = factors.shift[j] as number;
    const left = 1 - precision * variance;
    if (!(left > 0)) continue;
    const restMean = (mean - shift * variance) / left;
    const spread = (bounds.variance[j] as number) + variance / left;
    const z = ((bounds.side[j] as number) * (restMean - (bounds.limit[j] as number))) / Math.sqrt(spread);
    const exponent = (0.5 * precision * mean * mean - shift * mean + 0.5 * shift * shift * variance) / left;
    sum += valueOfLogNormalCdf(z) + exponent - 0.5 * Math.log(left);
  }
  return sum;
}
