/** What makes a drop test worth little, although it could be fitted. */
export type DropTestWarning =
  /** No set-up was repeated, so scatter cannot be told from effect. */
  | 'no-repeats'
  /** Readings scatter more than twice as much as a ring does. */
  | 'scatter'
  /** Set-ups were tried in the order of their travel: a drift over the session would look like their effect. */
  | 'order-follows-set-up'
  /** What is left after the fit rises or falls over the session. */
  | 'drift';

/** One usable landing in the order of trying, with the fit. */
export interface CheckedLanding {
  readonly setUp: string;
  readonly predicted: number;
  /** (read − predicted) over the ring's error. */
  readonly residual: number;
}

const LARGEST_SCATTER = 2;
/** Correlation of order and predicted travel above which three set-ups or more count as tried in order. */
const ORDERED = 0.8;
const FEWEST_SET_UPS = 3;
/** Standard errors of a trend that rarely come about by chance (5 in 100). */
const NOTABLE_TREND = 2;
const FEWEST_FOR_TREND = 5;

/** Reasons to distrust a drop test, from its landings in the order of trying and its scatter over the ring's error. */
export function dropTestWarnings(
  landings: readonly CheckedLanding[],
  scatter: number,
): readonly DropTestWarning[] {
  const setUps = new Set(landings.map(({ setUp }) => setUp));
  const order = landings.map((_, i) => i);
  const byTravel = correlation(
    order,
    landings.map(({ predicted }) => predicted),
  );
  const byResidual = correlation(
    order,
    landings.map(({ residual }) => residual),
  );
  // t of a slope from its correlation, n − 2 degrees of freedom.
  const trend = byResidual * Math.sqrt((landings.length - 2) / Math.max(Number.EPSILON, 1 - byResidual ** 2));
  const found: [DropTestWarning, boolean][] = [
    ['no-repeats', setUps.size === landings.length],
    ['scatter', scatter > LARGEST_SCATTER],
    ['order-follows-set-up', setUps.size >= FEWEST_SET_UPS && Math.abs(byTravel) > ORDERED],
    ['drift', landings.length >= FEWEST_FOR_TREND && Math.abs(trend) > NOTABLE_TREND],
  ];
  return found.filter(([, holds]) => holds).map(([warning]) => warning);
}

function correlation(x: readonly number[], y: readonly number[]): number {
  const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  const product = (a: readonly number[], ma: number, b: readonly number[], mb: number) =>
    a.reduce((sum, v, i) => sum + (v - ma) * ((b[i] ?? mb) - mb), 0);
  const spread = Math.sqrt(product(x, mx, x, mx) * product(y, my, y, my));
  return spread === 0 ? 0 : product(x, mx, y, my) / spread;
}
