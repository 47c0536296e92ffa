/** Standard error of a share of `count` cases, 1. */
export const shareError = (share: number, count: number): number => Math.sqrt((share * (1 - share)) / count);

/**
 * Chance that at most `hits` of `count` cases hit if each does with probability `share`: what a test may demand of a few
 * simulated teams. Sum of the binomial terms, each from the one before.
 */
export function chanceOfAtMost(hits: number, count: number, share: number): number {
  let term = (1 - share) ** count;
  let sum = 0;
  for (let k = 0; k <= hits; k += 1) {
    sum += term;
    term *= ((count - k) / (k + 1)) * (share / (1 - share));
  }
  return sum;
}
