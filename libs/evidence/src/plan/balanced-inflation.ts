/** Largest variance ratios over the pairs of arms, as scoreRuns finds them; Infinity: a trend explains a difference. */
export interface TrendInflation {
  readonly linear: number;
  readonly quadratic: number;
}

/** Shares of a sum of squares below this are rounding. */
const ROUNDING = 1e-9;

/**
 * Largest inflation Var(difference | riders, trend)/(2σ²/N) of riders' orders, each holding every arm equally often over
 * the same places, under a linear and a quadratic trend, dimensionless.
 *
 * Arms and riders are then orthogonal, and with t the sums over an arm's runs of the centred trend terms,
 * M = Σ(all runs) xxᵀ − Σ(arms) ttᵀ/N: inflation = 1 + (tᵢ − tⱼ)ᵀM⁻¹(tᵢ − tⱼ)/(2N), N runs an arm (cox1951). It is what
 * a fit of all runs gives, hundreds of times as fast.
 */
export function balancedInflation(orders: readonly (readonly number[])[], arms: number): TrendInflation {
  const places = orders[0]?.length ?? 0;
  const runsAnArm = (orders.length * places) / arms;
  const line = Array.from({ length: places }, (_, i) => i - (places - 1) / 2);
  const square = line.map((o) => o * o);
  const mean = square.reduce((sum, value) => sum + value, 0) / Math.max(1, places);
  const terms = line.map((o, i) => [o, (square[i] as number) - mean] as const);
  const sums = Array.from({ length: arms }, () => [0, 0] as [number, number]);
  for (const order of orders) {
    for (const [i, arm] of order.entries()) {
      const sum = sums[arm] as [number, number];
      sum[0] += terms[i]?.[0] as number;
      sum[1] += terms[i]?.[1] as number;
    }
  }
  // Line and square are orthogonal over places in equal steps, so that only the arms join them.
  const total = [0, 1].map((t) => orders.length * terms.reduce((sum, x) => sum + (x[t] as number) ** 2, 0));
  const left = (t: 0 | 1, u: 0 | 1) =>
    (t === u ? (total[t] as number) : 0) - sums.reduce((sum, s) => sum + s[t] * s[u], 0) / runsAnArm;
  const [a, b, c] = [left(0, 0), left(0, 1), left(1, 1)];
  const det = a * c - b * b;
  const [linearTotal, squareTotal] = total as [number, number];
  let [linear, quadratic] = [1, 1];
  for (const [i, first] of sums.entries()) {
    for (const second of sums.slice(i + 1)) {
      const [x, y] = [first[0] - second[0], first[1] - second[1]];
      const byLine = ratio(x * x, a, linearTotal);
      // Two places have no square of their own.
      const bySquare =
        squareTotal === 0
          ? byLine
          : ratio(x * x * c - 2 * x * y * b + y * y * a, det, linearTotal * squareTotal);
      linear = Math.max(linear, 1 + byLine / (2 * runsAnArm));
      quadratic = Math.max(quadratic, 1 + bySquare / (2 * runsAnArm));
    }
  }
  return { linear, quadratic };
}

const ratio = (part: number, left: number, total: number): number =>
  left <= ROUNDING * total ? Number.POSITIVE_INFINITY : part / left;
