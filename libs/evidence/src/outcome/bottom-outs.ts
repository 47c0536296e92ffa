import { EvidenceInputError, requireBetween } from '../errors.js';
import { binomialUpperTail } from '../numerics/binomial.js';
import { tUpperQuantile } from '../numerics/distributions.js';
import { normalUpperTail } from '../numerics/normal.js';
import { gaussLegendre } from '../numerics/quadrature.js';
import type { ExpectedHit } from './expected-hit.js';

/** How likely as many, and as few, runs with a bottom-out were, by what was expected; dimensionless. */
export interface BottomOutTails {
  /** P(at least as many). */
  readonly asMany: number;
  /** P(at most as many). */
  readonly asFew: number;
}

/** Beyond six standard deviations of the shared level lie 2e-9 of it. */
const FARTHEST_LEVEL = 6;
/** Narrow enough for the step that p(u) becomes where runs scatter a tenth as much as the level. */
const PANELS = 24;

/**
 * Chances of at least and of at most `bottomed` runs with a bottom-out among `runs`, dimensionless.
 *
 * Runs on one set-up share a level u ~ N(0, 1) that nobody knew: given it each bottoms out with
 * p(u) = Q((b − levelSd·u)/runSd), where b = √(levelSd² + runSd²)·Q⁻¹(risk), so that the mean of p is the risk. The
 * exact binomial tail is averaged over u (Gauss–Legendre). levelSd = 0 gives the plain binomial; runSd = 0 needs
 * levelSd > 0. Throws EvidenceInputError for counts or a risk that cannot be.
 */
export function bottomOutTails(
  { levelSd, runSd }: Pick<ExpectedHit, 'levelSd' | 'runSd'>,
  risk: number,
  bottomed: number,
  runs: number,
): BottomOutTails {
  requireBetween('risk', risk, 'share of runs', 0, 1);
  if (!Number.isInteger(runs) || runs < 0)
    throw new EvidenceInputError('runs', runs, 'runs', 'whole numbers from 0');
  if (!Number.isInteger(bottomed) || bottomed < 0 || bottomed > runs) {
    throw new EvidenceInputError('bottomed', bottomed, 'runs', `whole numbers from 0 to ${runs}`);
  }
  const both = (p: number): BottomOutTails => ({
    asMany: binomialUpperTail(bottomed, runs, p),
    // At most k bottom out when at least n − k do not.
    asFew: binomialUpperTail(runs - bottomed, runs, 1 - p),
  });
  if (levelSd === 0 || risk === 0 || risk === 1) return both(risk);
  const bound = Math.hypot(levelSd, runSd) * tUpperQuantile(risk, Number.POSITIVE_INFINITY);
  const { x, weight } = gaussLegendre(-FARTHEST_LEVEL, FARTHEST_LEVEL, PANELS);
  let [asMany, asFew, total] = [0, 0, 0];
  for (const [i, u] of x.entries()) {
    const tails = both(normalUpperTail((bound - levelSd * u) / runSd));
    const share = (weight[i] as number) * Math.exp(-0.5 * u * u);
    asMany += share * tails.asMany;
    asFew += share * tails.asFew;
    total += share;
  }
  return { asMany: asMany / total, asFew: asFew / total };
}
