import type { DemandComponent } from './component.js';
import { toDigits } from '../numerics/digits.js';
import type { DemandDesign } from './design.js';
import { mergedEffects } from './merged-effects.js';
import type { LatticePoint } from './sd-flood.js';

/** Parts kept at most: a prediction is read off all of them, up to 29 times each on a track of bounds. */
const MAX_COMPONENTS = 96;
/** Numbers kept at most, so that a stored fit of a large team stays at about a megabyte. */
const MAX_NUMBERS = 80_000;
/** Of a pair of rider and track: its offset and variance; the pulls come on top, one a cell. */
const NUMBERS_A_PAIR = 2;
/** Digits of stored numbers: four more than the approximation's own error. */
const STORED_DIGITS = 8;

/** Weights of the lattice points, adding up to 1. */
export function weightsOf(points: readonly LatticePoint[]): number[] {
  const peak = points.reduce((most, point) => Math.max(most, point.logDensity), Number.NEGATIVE_INFINITY);
  const raw = points.map((point) => Math.exp(point.logDensity - peak));
  const total = raw.reduce((sum, value) => sum + value, 0);
  return raw.map((value) => value / total);
}

/**
 * Merges light lattice points into the nearest heavy ones, which keep mean and covariance; tail probabilities then
 * agree with those of the whole lattice to a hundredth of themselves (docs/evidence/demand.md, D8).
 * `skewed` lists the tracks, by index, that the points' skews belong to.
 */
export function condense(
  design: DemandDesign,
  points: readonly LatticePoint[],
  skewed: readonly number[],
): DemandComponent[] {
  const weights = weightsOf(points);
  const size = points[0]?.posterior.mean.length ?? 0;
  const numbers = (size * (size + 3)) / 2 + NUMBERS_A_PAIR * design.pairs.length + design.cellPair.length;
  const room = Math.floor(MAX_NUMBERS / numbers);
  const order = [...weights.keys()].sort((a, b) => (weights[b] as number) - (weights[a] as number) || a - b);
  const centres = order.slice(0, Math.max(1, Math.min(MAX_COMPONENTS, room)));
  const members = new Map<number, number[]>(centres.map((i) => [i, []]));
  for (const i of order) members.get(nearest(points, i, centres))?.push(i);
  return [...members.values()].map((group) =>
    merge(
      design,
      group.map((i) => ({ point: points[i] as LatticePoint, weight: weights[i] as number })),
      skewed,
    ),
  );
}

function nearest(points: readonly LatticePoint[], i: number, centres: readonly number[]): number {
  const from = (points[i] as LatticePoint).index;
  let best = i;
  let least = Number.POSITIVE_INFINITY;
  for (const centre of centres) {
    const to = (points[centre] as LatticePoint).index;
    const distance = to.reduce((sum, k, axis) => sum + (k - (from[axis] as number)) ** 2, 0);
    if (distance < least) {
      best = centre;
      least = distance;
    }
  }
  return best;
}

const stored = (value: number): number => toDigits(value, STORED_DIGITS);

function merge(
  design: DemandDesign,
  parts: readonly { point: LatticePoint; weight: number }[],
  skewed: readonly number[],
): DemandComponent {
  const weight = parts.reduce((sum, part) => sum + part.weight, 0);
  const average = (value: (point: LatticePoint) => number): number =>
    parts.reduce((sum, part) => sum + (part.weight / weight) * value(part.point), 0);
  const size = parts[0]?.point.posterior.mean.length ?? 0;
  const mean = Array.from({ length: size }, (_, a) => average((point) => point.posterior.mean[a] as number));
  const covariance = new Float64Array((size * (size + 1)) / 2);
  for (const part of parts) {
    const { posterior } = part.point;
    const share = part.weight / weight;
    let at = 0;
    for (let a = 0; a < size; a += 1) {
      const offset = (posterior.mean[a] as number) - (mean[a] as number);
      for (let b = 0; b <= a; b += 1) {
        const product = offset * ((posterior.mean[b] as number) - (mean[b] as number));
        const within = posterior.covariance[a * size + b] as number;
        covariance[at] = (covariance[at] as number) + share * (within + product);
        at += 1;
      }
    }
  }
  return {
    weight,
    mean: mean.map(stored),
    covariance: Array.from(covariance, stored),
    variances: {
      track: average((point) => point.sds.track ** 2),
      rider: average((point) => point.sds.rider ** 2),
      riderOnTrack: average((point) => point.sds.riderOnTrack ** 2),
      run: average((point) => point.sds.run ** 2),
    },
    effects: mergedEffects(
      design,
      parts.map(({ point, weight: own }) => ({ posterior: point.posterior, share: own / weight })),
    ).map(({ offset, variance, pulls }) => ({
      offset: stored(offset),
      variance: stored(variance),
      pulls: pulls.map(stored),
    })),
    skews: skewed.map((track, i) => ({
      track,
      weights: (parts[0]?.point.skews[i] ?? []).map((_, k) => average((point) => point.skews[i]?.[k] ?? 0)),
    })),
  };
}
