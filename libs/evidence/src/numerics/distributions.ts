import digamma from '@stdlib/math-base-special-digamma';
import trigamma from '@stdlib/math-base-special-trigamma';
import chiSquareQuantileOf from '@stdlib/stats-base-dists-chisquare-quantile';
import normalQuantileOf from '@stdlib/stats-base-dists-normal-quantile';
import tCdf from '@stdlib/stats-base-dists-t-cdf';
import tQuantileOf from '@stdlib/stats-base-dists-t-quantile';
import { normalUpperTail } from './normal.js';

export { digamma, trigamma };

/** P(T > t) of Student's t, dimensionless; df > 0, Infinity gives the normal tail. Never formed as 1 − cdf. */
export function tUpperTail(t: number, df: number): number {
  return df === Number.POSITIVE_INFINITY ? normalUpperTail(t) : tCdf(-t, df);
}

/** P(|T| > |t|), dimensionless. */
export const tTwoSided = (t: number, df: number): number => Math.min(1, 2 * tUpperTail(Math.abs(t), df));

/** The t that the upper tail `tail` lies above, dimensionless; 0 < tail < 1, df > 0 or Infinity. */
export function tUpperQuantile(tail: number, df: number): number {
  return df === Number.POSITIVE_INFINITY ? -normalQuantileOf(tail, 0, 1) : -tQuantileOf(tail, df);
}

/** The value below which the share p of χ² on df degrees of freedom lies; good to 1e-8 up to some hundred df. */
export const chiSquareQuantile = (p: number, df: number): number => chiSquareQuantileOf(p, df);

const ONE_OVER_X_ABOVE = 1e7;
const ONE_OVER_X_BELOW = 1e-6;
const NEWTON_STEPS = 50;
const NEWTON_TOLERANCE = 1e-10;
/** Relative step of the central difference for ψ″; its error of 1e-8 only slows Newton's last step. */
const DIFFERENCE_STEP = 1e-4;

/**
 * The y at which ψ′(y) = x, dimensionless.
 *
 * Newton's method on 1/ψ′, which is nearly linear, from y = ½ + 1/x (smyth2004, appendix). x > 0; 1/√x for x > 1e7
 * and 1/x for x < 1e-6, where these are exact to 1e-7. NaN for x ≤ 0.
 */
export function inverseTrigamma(x: number): number {
  if (!(x > 0)) return Number.NaN;
  if (x > ONE_OVER_X_ABOVE) return 1 / Math.sqrt(x);
  if (x < ONE_OVER_X_BELOW) return 1 / x;
  let y = 0.5 + 1 / x;
  for (let i = 0; i < NEWTON_STEPS; i += 1) {
    const value = trigamma(y);
    const h = DIFFERENCE_STEP * y;
    const derivative = (trigamma(y + h) - trigamma(y - h)) / (2 * h);
    const step = (value * (1 - value / x)) / derivative;
    y += step;
    if (Math.abs(step) < NEWTON_TOLERANCE * y) break;
  }
  return y;
}
