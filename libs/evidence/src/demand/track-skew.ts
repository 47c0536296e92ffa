import { boundAt, logBoundOverFactor } from './bound-factor.js';
import type { DemandDesign } from './design.js';
import type { LatticePoint } from './sd-lattice.js';

/** Places, in posterior sds of a track's level mu + track around its mean, at which its density is worked out anew. */
const NODE_SPACING = 0.4;
const NODES_BELOW = 10;
/** More above than below: lower bounds leave the long tail on the upper side. */
const NODES_ABOVE = 13;
const SKEW_NODES: readonly number[] = Array.from(
  { length: NODES_BELOW + 1 + NODES_ABOVE },
  (_, i) => (i - NODES_BELOW) * NODE_SPACING,
);
/** Each node stands for a normal part of this sd; a spacing of 1.3 sds makes the parts add up smoothly, to 2e-5. */
const NODE_SD = NODE_SPACING / 1.3;
/** Share of the level's variance that is left within one part. */
export const NODE_VARIANCE = NODE_SD ** 2;

/** Places of the parts for given weights: drawn in a little, so that parts of NODE_SD keep the variance. */
export function skewPlaces(weights: readonly number[]): number[] {
  const mean = weights.reduce((sum, weight, k) => sum + weight * (SKEW_NODES[k] as number), 0);
  const variance = weights.reduce(
    (sum, weight, k) => sum + weight * ((SKEW_NODES[k] as number) - mean) ** 2,
    0,
  );
  const shrink = Math.sqrt(Math.max(0, 1 - NODE_VARIANCE / variance));
  return SKEW_NODES.map((z) => mean + (z - mean) * shrink);
}

/**
 * Weights of the nodes for one track at one lattice point, adding up to 1.
 *
 * Lower bounds with few values beside them leave the level of a track skewed, which a normal factor cannot say.
 * Given the level, each bound of the track is averaged over what is left open, and the product of the bounds over
 * their factors tilts the normal density (cseke2011, factorised form); equation D9 of docs/evidence/demand.md.
 */
export function skewWeights(
  design: DemandDesign,
  point: LatticePoint,
  centre: number,
  track: number,
): number[] {
  const { mean, covariance, factors } = point.posterior;
  const n = mean.length;
  const cov = (a: number, b: number): number => covariance[a * n + b] as number;
  const t = 1 + track;
  const levelVariance = cov(0, 0) + 2 * cov(0, t) + cov(t, t);
  const levelSd = Math.sqrt(levelVariance);
  const logWeights = SKEW_NODES.map((z) => -0.5 * z * z);
  for (const [j, cell] of design.bounds.cell.entries()) {
    if (design.cellTrack[cell] !== track) continue;
    const r = 1 + design.tracks.length + (design.cellRider[cell] as number);
    const cellMean = (mean[0] as number) + (mean[t] as number) + (mean[r] as number) - centre;
    const shared = levelVariance + cov(0, r) + cov(t, r);
    const slope = shared / levelVariance;
    const open = Math.max(0, shared + cov(0, r) + cov(t, r) + cov(r, r) - slope * shared);
    const bound = boundAt(design, j, point.sds.run, centre);
    for (const [k, z] of SKEW_NODES.entries()) {
      const given = cellMean + slope * z * levelSd;
      const tilt = logBoundOverFactor(
        bound,
        given,
        open,
        factors.precision[j] as number,
        factors.shift[j] as number,
      );
      logWeights[k] = (logWeights[k] as number) + tilt;
    }
  }
  const most = Math.max(...logWeights);
  const raw = logWeights.map((value) => Math.exp(value - most));
  const total = raw.reduce((sum, value) => sum + value, 0);
  return raw.map((value) => value / total);
}
