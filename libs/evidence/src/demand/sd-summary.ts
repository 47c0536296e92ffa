import { weightsOf } from './condense.js';
import { SUMMARY_LEVELS, type Summary } from './mixture.js';
import type { SdLattice } from './sd-lattice.js';
import type { SdComponent } from './sd-surface.js';

/** Places within one lattice step at which the marginal density is interpolated for its quantiles. */
const PLACES_A_STEP = 32;

/** Posterior of one standard deviation from the lattice, log metres. */
export function summaryOfSd(lattice: SdLattice, name: SdComponent): Summary {
  const weights = weightsOf(lattice.points);
  let mean = 0;
  for (const [i, point] of lattice.points.entries()) mean += (weights[i] as number) * point.sds[name];
  let variance = 0;
  for (const [i, point] of lattice.points.entries())
    variance += (weights[i] as number) * (point.sds[name] - mean) ** 2;
  const axis = lattice.axes.findIndex((candidate) => candidate.name === name);
  const found = lattice.axes[axis];
  if (found === undefined) return { mean, sd: 0, q05: mean, q50: mean, q95: mean };
  const marginal = new Map<number, number>();
  for (const [i, point] of lattice.points.entries()) {
    const k = point.index[axis] as number;
    marginal.set(k, (marginal.get(k) ?? 0) + (weights[i] as number));
  }
  const quantile = quantileOfMarginal(marginal, (place) => found.knee * Math.sinh(place * found.step));
  return {
    mean,
    sd: Math.sqrt(variance),
    q05: quantile(SUMMARY_LEVELS.q05),
    q50: quantile(SUMMARY_LEVELS.q50),
    q95: quantile(SUMMARY_LEVELS.q95),
  };
}

/**
 * Quantile function of a density known at k + ½ (k = 0, 1, …): its logarithm is interpolated by a parabola through
 * each value and its neighbours, mirrored at 0, where the density is even.
 */
function quantileOfMarginal(
  marginal: ReadonlyMap<number, number>,
  sdAt: (place: number) => number,
): (p: number) => number {
  const first = Math.min(...marginal.keys());
  const last = Math.max(...marginal.keys());
  const logOf = (k: number): number | undefined => {
    const value = marginal.get(k < 0 ? -1 - k : k);
    return value === undefined ? undefined : Math.log(value);
  };
  const places: number[] = [];
  const masses: number[] = [];
  for (let k = first; k <= last; k += 1) {
    const here = logOf(k) ?? Number.NEGATIVE_INFINITY;
    const below = logOf(k - 1) ?? 2 * here - (logOf(k + 1) ?? here);
    const above = logOf(k + 1) ?? 2 * here - below;
    for (let i = 0; i < PLACES_A_STEP; i += 1) {
      const t = (i + 0.5) / PLACES_A_STEP - 0.5;
      places.push(k + (i + 1) / PLACES_A_STEP);
      masses.push(Math.exp(here + (t * (above - below)) / 2 + (t * t * (above - 2 * here + below)) / 2));
    }
  }
  const total = masses.reduce((sum, value) => sum + value, 0);
  return (p) => {
    let before = 0;
    for (const [i, mass] of masses.entries()) {
      const share = mass / total;
      if (before + share >= p || i === masses.length - 1) {
        return sdAt((places[i] as number) - (1 - Math.min(1, (p - before) / share)) / PLACES_A_STEP);
      }
      before += share;
    }
    return Number.NaN;
  };
}
