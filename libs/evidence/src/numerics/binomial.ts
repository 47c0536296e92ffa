/**
 * Probability of at least `hits` among `trials` that each hit with probability p, dimensionless.
 *
 * Σ_{k ≥ hits} C(n, k) pᵏ (1 − p)ⁿ⁻ᵏ, exact, summed from logarithms. 0 ≤ p ≤ 1, 0 ≤ hits ≤ trials whole numbers;
 * hits = 0 gives 1.
 */
export function binomialUpperTail(hits: number, trials: number, p: number): number {
  if (hits <= 0) return 1;
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  let sum = 0;
  let logChoose = 0;
  for (let k = 0; k <= trials; k += 1) {
    if (k > 0) logChoose += Math.log((trials - k + 1) / k);
    if (k >= hits) sum += Math.exp(logChoose + k * Math.log(p) + (trials - k) * Math.log1p(-p));
  }
  return Math.min(1, sum);
}
