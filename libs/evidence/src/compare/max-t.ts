import { normalUpperTail } from '../numerics/normal.js';
import { gaussLegendre } from '../numerics/quadrature.js';
import { meanOverScatter } from '../numerics/scatter.js';
import { tTwoSided, tUpperQuantile } from '../numerics/distributions.js';

/** Correlations ρᵢⱼ ≈ λᵢλⱼ of several differences to one set-up. */
export interface CommonFactor {
  loadings: number[];
  /** Largest error of a correlation that the loadings leave. */
  worstError: number;
}

const FACTOR_STEPS = 500;
/** Loadings stay below 1 by this much, so that a difference keeps a part of its own. */
const LOADING_GAP = 1e-6;

/** Loadings whose products are nearest to the given correlations: least squares, one loading after another. */
export function commonFactor(correlations: readonly (readonly number[])[]): CommonFactor {
  const m = correlations.length;
  const rho = (i: number, j: number): number => correlations[i]?.[j] as number;
  const loadings = new Array<number>(m).fill(m === 1 ? 0 : Math.SQRT1_2);
  for (let step = 0; m > 1 && step < FACTOR_STEPS; step += 1) {
    for (let i = 0; i < m; i += 1) {
      let product = 0;
      let square = 0;
      for (let j = 0; j < m; j += 1) {
        if (j === i) continue;
        product += rho(i, j) * (loadings[j] as number);
        square += (loadings[j] as number) ** 2;
      }
      const wanted = square > 0 ? product / square : 0;
      // Two differences leave one product for two loadings: halfway steps keep them alike.
      const next = m === 2 ? Math.sign(wanted) * Math.sqrt(Math.abs(rho(0, 1))) : wanted;
      loadings[i] = Math.max(LOADING_GAP - 1, Math.min(1 - LOADING_GAP, next));
    }
    if (m === 2) {
      const root = Math.min(1 - LOADING_GAP, Math.sqrt(Math.abs(rho(0, 1))));
      loadings[0] = root;
      loadings[1] = rho(0, 1) < 0 ? -root : root;
    }
  }
  let worstError = 0;
  for (let i = 0; i < m; i += 1) {
    for (let j = 0; j < i; j += 1) {
      worstError = Math.max(
        worstError,
        Math.abs(rho(i, j) - (loadings[i] as number) * (loadings[j] as number)),
      );
    }
  }
  return { loadings, worstError };
}

/** Reach and panels of the integral over one half of the common factor: beyond 8.5 lies 2e-17 of a normal density. */
const FACTOR_REACH = 8.5;
const FACTOR_PANELS = 3;
/** Panel in log s over which the probability of |t| < 10 is smooth enough for 16 points. */
const SMOOTH_PANEL = 1.5;
const FACTOR_RULE = gaussLegendre(0, FACTOR_REACH, FACTOR_PANELS);
/** Both halves: whether a |t| is exceeded does not ask for the sign of the common factor. */
const FACTOR_WEIGHTS = FACTOR_RULE.x.map(
  (u, i) => (2 * (FACTOR_RULE.weight[i] as number) * Math.exp(-0.5 * u * u)) / Math.sqrt(2 * Math.PI),
);

/**
 * Probability that the largest of several |t| exceeds `t` when no difference is real, dimensionless (dunnett1955).
 *
 * 1 − E_s ∫ φ(u) Πᵢ [Φ((ts + λᵢu)/√(1−λᵢ²)) − Φ((−ts + λᵢu)/√(1−λᵢ²))] du, s the common estimated scatter on df
 * degrees of freedom. Absolute error below 1e-8 for |λ| ≤ 0.9. t ≥ 0; df > 0 or Infinity.
 */
export function maxTTail(t: number, loadings: readonly number[], df: number): number {
  if (loadings.length === 1) return tTwoSided(t, df);
  const own = loadings.map((loading) => Math.sqrt(1 - loading * loading));
  return meanOverScatter(
    df,
    (s) => {
      let inside = 0;
      for (const [k, u] of FACTOR_RULE.x.entries()) {
        let product = 1;
        for (let i = 0; i < loadings.length; i += 1) {
          const shift = (loadings[i] as number) * u;
          const sd = own[i] as number;
          product *= 1 - normalUpperTail((t * s + shift) / sd) - normalUpperTail((t * s - shift) / sd);
        }
        inside += (FACTOR_WEIGHTS[k] as number) * product;
      }
      return Math.max(0, 1 - inside);
    },
    { panel: SMOOTH_PANEL },
  );
}

const MOST_STEPS = 60;
const CRITICAL_TOLERANCE = 1e-9;

/**
 * The t that the largest of several |t| exceeds with probability α when no difference is real, dimensionless.
 *
 * Between the critical value of one difference and the one after Bonferroni; regula falsi (Illinois rule,
 * dowell1971) on the log of the tail. 0 < α < 1.
 */
export function maxTCritical(alpha: number, loadings: readonly number[], df: number): number {
  const excess = (t: number): number => Math.log(maxTTail(t, loadings, df) / alpha);
  let low = tUpperQuantile(alpha / 2, df);
  if (loadings.length === 1) return low;
  let high = tUpperQuantile(alpha / (2 * loadings.length), df);
  let atLow = excess(low);
  let atHigh = excess(high);
  let t = high;
  for (let i = 0; i < MOST_STEPS && high - low > CRITICAL_TOLERANCE * high; i += 1) {
    const next = (low * atHigh - high * atLow) / (atHigh - atLow);
    const value = excess(next);
    const settled = Math.abs(next - t) < CRITICAL_TOLERANCE * high;
    t = next;
    if (settled || value === 0) break;
    if (value > 0) {
      low = next;
      atLow = value;
      atHigh /= 2;
    } else {
      high = next;
      atHigh = value;
      atLow /= 2;
    }
  }
  return t;
}
