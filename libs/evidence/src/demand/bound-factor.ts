import { curvatureOfLogNormalCdf, slopeOfLogNormalCdf, valueOfLogNormalCdf } from '../numerics/normal.js';
import type { BoundedCell } from './design.js';

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

/** Factor exp(shift·η − ½ precision·η²) that is matched to a bound; kept and filled anew, as it is made by the million. */
export class MatchedFactor {
  precision = 0;
  shift = 0;

  /**
   * The factor that gives the rest (natural parameters, (log m)⁻² and (log m)⁻¹) times the bound its mean and
   * variance; equation D4. The bound is Φ(side·(η − limit)/√variance).
   */
  match(side: number, limit: number, variance: number, restPrecision: number, restShift: number): void {
    const restVariance = 1 / restPrecision;
    const restMean = restShift * restVariance;
    const spread = variance + restVariance;
    const root = Math.sqrt(spread);
    const z = (side * (restMean - limit)) / root;
    const slope = slopeOfLogNormalCdf(z);
    // Second derivative of log Z towards the rest's mean, seen through a Gaussian factor.
    const bend = curvatureOfLogNormalCdf(z, slope) / spread;
    this.precision = bend / (1 - bend * restVariance);
    const pull = (side * slope) / root;
    this.shift = pull * (1 + this.precision * restVariance) + this.precision * restMean;
  }
}

/**
 * log of the mean of bound ÷ factor under N(mean, variance), dimensionless, added up over the rows of one cell;
 * equation D5. 0 for a factor that is sharper than the distribution, which no converged solution has.
 */
export function logBoundsOverFactors(
  bounds: BoundRows,
  factors: BoundFactors,
  { first, last }: BoundedCell,
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
