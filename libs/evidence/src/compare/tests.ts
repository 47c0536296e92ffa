import { tTwoSided, tUpperTail } from '../numerics/distributions.js';

/** P values of the two one-sided tests and their larger one, dimensionless. */
export interface Equivalence {
  /** Against "at most −margin" and "at least +margin". */
  pLow: number;
  pHigh: number;
  p: number;
}

/**
 * Two one-sided t tests of a difference against ± margin, P values (schuirmann1987): the larger of P(T > (d + m)/se)
 * and P(T < (d − m)/se). estimate, se, margin in one unit; se > 0, margin > 0; df > 0 or Infinity.
 */
export function equivalenceTest(estimate: number, se: number, df: number, margin: number): Equivalence {
  const pLow = tUpperTail((estimate + margin) / se, df);
  const pHigh = tUpperTail((margin - estimate) / se, df);
  return { pLow, pHigh, p: Math.max(pLow, pHigh) };
}

/** Two-sided P value of estimate/se, dimensionless; se > 0, df > 0 or Infinity. */
export const differenceTest = (estimate: number, se: number, df: number): number =>
  tTwoSided(estimate / se, df);

/** P values adjusted after holm1979, in the order given: they keep the chance of any false finding below α. */
export function holmAdjusted(p: readonly number[]): number[] {
  const order = [...p.keys()].sort((a, b) => (p[a] as number) - (p[b] as number));
  const adjusted = new Array<number>(p.length).fill(1);
  let largest = 0;
  for (const [rank, i] of order.entries()) {
    largest = Math.max(largest, Math.min(1, (p.length - rank) * (p[i] as number)));
    adjusted[i] = largest;
  }
  return adjusted;
}

/**
 * Two-sided P value of Fisher's exact test of two shares, dimensionless (fisher1935): the probability of all tables
 * with these margins that are no more likely than the one seen. Counts ≥ 0.
 */
export function fisherExact(hitsA: number, missesA: number, hitsB: number, missesB: number): number {
  const hits = hitsA + hitsB;
  const a = hitsA + missesA;
  const total = a + hitsB + missesB;
  const logFactorial = (n: number): number => {
    let sum = 0;
    for (let i = 2; i <= n; i += 1) sum += Math.log(i);
    return sum;
  };
  const logChoose = (n: number, k: number): number => logFactorial(n) - logFactorial(k) - logFactorial(n - k);
  const probability = (k: number): number =>
    Math.exp(logChoose(a, k) + logChoose(total - a, hits - k) - logChoose(total, hits));
  const ROUNDING = 1e-9;
  const seen = probability(hitsA) * (1 + ROUNDING);
  let sum = 0;
  for (let k = Math.max(0, hits - (total - a)); k <= Math.min(a, hits); k += 1) {
    if (probability(k) <= seen) sum += probability(k);
  }
  return Math.min(1, sum);
}
