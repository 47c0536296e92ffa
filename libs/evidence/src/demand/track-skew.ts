import { logBoundsOverFactors } from './bound-factor.js';
import type { BoundProduct } from './bound-product.js';
import type { ConditionalPosterior } from './conditional-posterior.js';
import type { BoundedCell, DemandDesign } from './design.js';
import { levelAndCells, withoutFactors } from './level-group.js';

/** Places, in posterior sds of a track's level mu + track around its mean, at which its density is worked out anew. */
const NODE_SPACING = 0.4;
const NODES_BELOW = 10;
/** More above than below: lower bounds leave the long tail on the upper side. */
const NODES_ABOVE = 18;
const SKEW_NODES: readonly number[] = Array.from(
  { length: NODES_BELOW + 1 + NODES_ABOVE },
  (_, i) => (i - NODES_BELOW) * NODE_SPACING,
);
/** Each node stands for a normal part of this sd; a spacing of 1.3 sds makes the parts add up smoothly, to 2e-5. */
const NODE_SD = NODE_SPACING / 1.3;
/** Share of the level's variance that is left within one part. */
export const NODE_VARIANCE = NODE_SD ** 2;

/** Gauss–Hermite rule of five points for a standard normal weight: roots of z⁵ − 10z³ + 15z (golub1969). */
const INNER = Math.sqrt(5 - Math.sqrt(10));
const OUTER = Math.sqrt(5 + Math.sqrt(10));
const INNER_WEIGHT = (7 + 2 * Math.sqrt(10)) / 60;
const OUTER_WEIGHT = (7 - 2 * Math.sqrt(10)) / 60;
const MIDDLE_WEIGHT = 8 / 15;
const FIVE_POINTS = [
  { z: -OUTER, logWeight: Math.log(OUTER_WEIGHT) },
  { z: -INNER, logWeight: Math.log(INNER_WEIGHT) },
  { z: 0, logWeight: Math.log(MIDDLE_WEIGHT) },
  { z: INNER, logWeight: Math.log(INNER_WEIGHT) },
  { z: OUTER, logWeight: Math.log(OUTER_WEIGHT) },
];

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

/** Density of a track's level anew, and what the change means for the evidence. */
export interface TrackSkew {
  /** One a node, adding up to 1. */
  weights: number[];
  /** To be added to the log evidence. */
  logCorrection: number;
}

/**
 * Density of the level L = mu + track of a track whose readings are mostly bounds, for given sds.
 *
 * Many bounds side by side leave a skewed level with a long tail, which normal factors make too short. With all
 * bounds of the track taken out, L and the levels of its cells are jointly normal, and given L the cells are nearly
 * independent: p(L) ∝ N(L) Π_cells E[Π bounds | L], each inner mean by a five-point rule; equations D9, D10 of
 * docs/evidence/demand.md.
 */
export function trackSkew(
  design: DemandDesign,
  posterior: ConditionalPosterior,
  centre: number,
  track: number,
): TrackSkew {
  const cells = design.boundedCells.filter(({ cell }) => design.cellTrack[cell] === track);
  const group = levelAndCells(design, posterior, centre, track, cells);
  const free = withoutFactors(group);
  const levelMean = group.mean[0] as number;
  const levelSd = Math.sqrt(group.covariance[0] as number);
  const freeMean = free.mean[0] as number;
  const freeVariance = free.covariance[0] as number;
  const places = Float64Array.from(SKEW_NODES, (z) => levelMean + z * levelSd);
  const logWeights = places.map((level) => (-0.5 * (level - freeMean) ** 2) / freeVariance);
  const logs = new Float64Array(FIVE_POINTS.length);
  let logFactors = free.logIntegral;
  for (let c = 1; c < group.size; c += 1) {
    const cell = cells[c - 1] as BoundedCell;
    const own = c * (group.size + 1);
    const slope = (free.covariance[c] as number) / freeVariance;
    const open = (free.covariance[own] as number) - slope * (free.covariance[c] as number);
    const openSd = Math.sqrt(Math.max(0, open));
    const product = posterior.bounds.productOf(cell);
    for (let k = 0; k < places.length; k += 1) {
      const mean = (free.mean[c] as number) + slope * ((places[k] as number) - freeMean);
      logWeights[k] = (logWeights[k] as number) + logMeanOfBounds(product, mean, openSd, logs);
    }
    const variance = group.covariance[own] as number;
    const { bounds, factors } = posterior;
    logFactors += logBoundsOverFactors(bounds, factors, cell, group.mean[c] as number, variance);
  }
  const total = logSumExp(logWeights);
  const logEvidence = total + Math.log((NODE_SPACING * levelSd) / Math.sqrt(2 * Math.PI * freeVariance));
  return {
    weights: Array.from(logWeights, (value) => Math.exp(value - total)),
    logCorrection: logEvidence - logFactors,
  };
}

/** log E[Π bounds] for a level that is normal with `mean` and `sd`; `logs` is working space of five places. */
function logMeanOfBounds(product: BoundProduct, mean: number, sd: number, logs: Float64Array): number {
  for (let k = 0; k < FIVE_POINTS.length; k += 1) {
    const { z, logWeight } = FIVE_POINTS[k] as (typeof FIVE_POINTS)[number];
    logs[k] = logWeight + product.logAt(mean + z * sd);
  }
  return logSumExp(logs);
}

function logSumExp(values: Float64Array): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < values.length; k += 1) most = Math.max(most, values[k] as number);
  let sum = 0;
  for (let k = 0; k < values.length; k += 1) sum += Math.exp((values[k] as number) - most);
  return most + Math.log(sum);
}
