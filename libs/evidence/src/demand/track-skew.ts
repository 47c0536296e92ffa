import { choleskyInPlace, inverseFromCholesky } from '../numerics/cholesky.js';
import { logBoundOverFactor } from './bound-factor.js';
import type { BoundProduct } from './bound-product.js';
import type { ConditionalPosterior } from './conditional-posterior.js';
import type { BoundedCell, DemandDesign } from './design.js';
import { levelOfCell, type LevelForm } from './pair-effects.js';

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
  const rest = withoutFactors(group);
  const levelSd = Math.sqrt(group.covariance[0] as number);
  const restVariance = rest.covariance[0] as number;
  const places = SKEW_NODES.map((z) => (group.mean[0] as number) + z * levelSd);
  const logWeights = places.map((level) => -0.5 * ((level - (rest.mean[0] as number)) ** 2 / restVariance));
  let logFactors = rest.logIntegral;
  for (const [i, bounded] of cells.entries()) {
    const c = i + 1;
    const slope = (rest.covariance[c] as number) / restVariance;
    const open = Math.max(
      0,
      (rest.covariance[c * group.size + c] as number) - slope * (rest.covariance[c] as number),
    );
    const product = posterior.bounds.productOf(bounded);
    const openSd = Math.sqrt(open);
    for (const [k, level] of places.entries()) {
      const mean = (rest.mean[c] as number) + slope * (level - (rest.mean[0] as number));
      logWeights[k] = (logWeights[k] as number) + logMeanOfBounds(product, mean, openSd);
    }
    for (let j = bounded.first; j < bounded.last; j += 1) {
      logFactors += logBoundOverFactor(
        posterior.bounds.at(j),
        group.mean[c] as number,
        group.covariance[c * group.size + c] as number,
        posterior.factors.precision[j] as number,
        posterior.factors.shift[j] as number,
      );
    }
  }
  const total = logSumExp(logWeights);
  const logEvidence = total + Math.log((NODE_SPACING * levelSd) / Math.sqrt(2 * Math.PI * restVariance));
  return {
    weights: logWeights.map((value) => Math.exp(value - total)),
    logCorrection: logEvidence - logFactors,
  };
}

/** Joint normal of a track's level (first) and the levels of its bounded cells, with the cells' factors added up. */
interface LevelGroup {
  size: number;
  mean: Float64Array;
  covariance: Float64Array;
  precision: Float64Array;
  shift: Float64Array;
}

/** mu + track, as a linear form in the unknowns. */
const levelOfTrack = (track: number): LevelForm => ({
  unknowns: [0, 1 + track],
  factors: [1, 1],
  offset: 0,
  variance: 0,
});

const sumOver = ({ unknowns, factors }: LevelForm, value: (unknown: number) => number): number =>
  unknowns.reduce((sum, unknown, k) => sum + (factors[k] as number) * value(unknown), 0);

function levelAndCells(
  design: DemandDesign,
  { mean, covariance, effects, factors }: ConditionalPosterior,
  centre: number,
  track: number,
  cells: readonly BoundedCell[],
): LevelGroup {
  const n = mean.length;
  const size = cells.length + 1;
  const forms = [levelOfTrack(track), ...cells.map(({ cell }) => levelOfCell(design, effects, cell))];
  const pairs = [-1, ...cells.map(({ cell }) => design.cellPair[cell] as number)];
  const group: LevelGroup = {
    size,
    mean: Float64Array.from(
      forms,
      (form) => form.offset + sumOver(form, (unknown) => mean[unknown] as number) - centre,
    ),
    covariance: new Float64Array(size * size),
    precision: new Float64Array(size),
    shift: new Float64Array(size),
  };
  for (const [i, row] of forms.entries()) {
    for (const [j, column] of forms.entries()) {
      // Cells of one pair, on different ground, share what is left open of its effect.
      const shared = pairs[i] === pairs[j] ? row.variance : 0;
      group.covariance[i * size + j] =
        shared + sumOver(row, (a) => sumOver(column, (b) => covariance[a * n + b] as number));
    }
  }
  for (const [i, { first, last }] of cells.entries()) {
    for (let j = first; j < last; j += 1) {
      group.precision[i + 1] = (group.precision[i + 1] as number) + (factors.precision[j] as number);
      group.shift[i + 1] = (group.shift[i + 1] as number) + (factors.shift[j] as number);
    }
  }
  return group;
}

/**
 * The group with its factors taken out, and the log integral of the factors against it (equation D9):
 * V₀ = V + V T^½ (I − T^½ V T^½)⁻¹ T^½ V,  m₀ = m − V₀ (shift − T m),  T = diag(precision).
 */
function withoutFactors(group: LevelGroup): {
  mean: Float64Array;
  covariance: Float64Array;
  logIntegral: number;
} {
  const { size, mean, covariance, precision, shift } = group;
  const root = precision.map(Math.sqrt);
  const inner = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < size; j += 1) {
      const scaled = (root[i] as number) * (covariance[i * size + j] as number) * (root[j] as number);
      inner[i * size + j] = Number(i === j) - scaled;
    }
  }
  const logDeterminant = choleskyInPlace(inner, size);
  const inverse = inverseFromCholesky(inner, size);
  const middle = inverse.map(
    (value, at) => (root[Math.floor(at / size)] as number) * value * (root[at % size] as number),
  );
  const added = product(product(covariance, middle, size), covariance, size);
  const rest = covariance.map((value, at) => value + (added[at] as number));
  const pull = shift.map((value, i) => value - (precision[i] as number) * (mean[i] as number));
  const moved = pull.map((_, i) => {
    let sum = 0;
    for (let j = 0; j < size; j += 1) sum += (rest[i * size + j] as number) * (pull[j] as number);
    return sum;
  });
  let form = 0;
  for (let i = 0; i < size; i += 1) {
    const m = mean[i] as number;
    form +=
      2 * (shift[i] as number) * m -
      (precision[i] as number) * m * m -
      (pull[i] as number) * (moved[i] as number);
  }
  return {
    mean: mean.map((value, i) => value - (moved[i] as number)),
    covariance: rest,
    logIntegral: 0.5 * (form + logDeterminant),
  };
}

/** Product of two square matrices, row-major. */
function product(left: Float64Array, right: Float64Array, size: number): Float64Array {
  const result = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    for (let k = 0; k < size; k += 1) {
      const value = left[i * size + k] as number;
      for (let j = 0; j < size; j += 1) {
        result[i * size + j] = (result[i * size + j] as number) + value * (right[k * size + j] as number);
      }
    }
  }
  return result;
}

/** log E[Π bounds] for a level that is normal with `mean` and `sd`. */
const logMeanOfBounds = (product: BoundProduct, mean: number, sd: number): number =>
  logSumExp(FIVE_POINTS.map(({ z, logWeight }) => logWeight + product.logAt(mean + z * sd)));

function logSumExp(values: readonly number[]): number {
  const most = Math.max(...values);
  let sum = 0;
  for (const value of values) sum += Math.exp(value - most);
  return most + Math.log(sum);
}
