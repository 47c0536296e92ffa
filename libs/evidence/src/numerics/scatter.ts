import { gaussLegendre } from './quadrature.js';

/** Beyond this fall of the log density from its top, exp(−30) = 9e-14, nothing is left that an error of 1e-10 would notice. */
const NEGLIGIBLE = 30;
/** Usual panel in log s: a normal tail in s that is as sharp as t = 100 makes it is still resolved. */
const SHARP_PANEL = 0.5;
const FEWEST_PANELS = 4;
const BISECTIONS = 60;

/**
 * Mean of a function of s = √(χ²_df/df), the estimated over the true standard deviation, both dimensionless; with
 * `upTo` the function counts as 0 above it, so that a kink there costs no accuracy; `panel` is the width in log s over which the function is smooth.
 *
 * ∫ f(s) s^(df−1) exp(−df s²/2) ds, normalised by the same rule so that no gamma function is needed; in log s, which
 * takes out the pole that the density has at 0 for df < 1. df > 0; df = Infinity is s = 1. Error below 1e-10 for
 * bounded functions that are smooth up to `upTo`.
 */
export function meanOverScatter(
  df: number,
  value: (s: number) => number,
  { upTo = Number.POSITIVE_INFINITY, panel = SHARP_PANEL }: { upTo?: number; panel?: number } = {},
): number {
  if (df === Number.POSITIVE_INFINITY) return upTo < 1 ? 0 : value(1);
  // In v = log s the density is exp(df·(v − exp(2v)/2)), with its top at v = 0.
  const log = (v: number): number => df * (v - 0.5 * Math.exp(2 * v) + 0.5);
  const [low, high] = [edge(log, -1), edge(log, 1)];
  const last = Math.min(high, Math.log(upTo));
  if (!(last > low)) return 0;
  const integral = (end: number, f: (s: number) => number): number => {
    const rule = gaussLegendre(low, end, Math.max(FEWEST_PANELS, Math.ceil((end - low) / panel)));
    return rule.x.reduce(
      (sum, v, i) => sum + (rule.weight[i] as number) * Math.exp(log(v)) * f(Math.exp(v)),
      0,
    );
  };
  return integral(last, value) / integral(high, () => 1);
}

/** Where the log density has become negligible, to one side of its top at 0. */
function edge(log: (v: number) => number, side: 1 | -1): number {
  let inner = 0;
  let outer: number = side;
  while (log(outer) > -NEGLIGIBLE) {
    inner = outer;
    outer *= 2;
  }
  for (let i = 0; i < BISECTIONS; i += 1) {
    const middle = (inner + outer) / 2;
    if (log(middle) > -NEGLIGIBLE) inner = middle;
    else outer = middle;
  }
  return outer;
}
