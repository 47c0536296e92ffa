import { summaryOfMixture, type NormalMixture, type Summary } from './mixture.js';
import { NODE_VARIANCE, skewPlaces } from './track-skew.js';

/** One part of the posterior mixture: normal over mu and all effects, with the random parts' variances. */
export interface DemandComponent {
  weight: number;
  /** Means of mu, track effects, rider effects, log metres. */
  mean: number[];
  /** Lower triangle of their covariance by rows, (log m)². */
  covariance: number[];
  /** Of a new track, a new rider, a new run, (log m)². */
  variances: { track: number; rider: number; run: number };
  /** Tracks that rest on bounds, by index, with the weights of the nodes along their level. */
  skews: { track: number; weights: number[] }[];
}

const covarianceOf = (component: DemandComponent, a: number, b: number): number => {
  const [row, column] = a >= b ? [a, b] : [b, a];
  return component.covariance[(row * (row + 1)) / 2 + column] as number;
};

function covarianceOfSums(
  component: DemandComponent,
  left: readonly number[],
  right: readonly number[],
): number {
  let sum = 0;
  for (const a of left) for (const b of right) sum += covarianceOf(component, a, b);
  return sum;
}

/**
 * Distribution of the sum of some unknowns (numbered as in DemandComponent.mean) and a fresh normal draw, log metres.
 * `track`, an index, names the track whose skewness matters; −1 for none.
 */
export function mixtureOf(
  components: readonly DemandComponent[],
  unknowns: readonly number[],
  track: number,
  freshVariance: (component: DemandComponent) => number,
): NormalMixture {
  const mixture: NormalMixture = { weights: [], means: [], sds: [] };
  const add = (weight: number, mean: number, variance: number): void => {
    mixture.weights.push(weight);
    mixture.means.push(mean);
    mixture.sds.push(Math.sqrt(variance));
  };
  for (const component of components) {
    const mean = unknowns.reduce((sum, at) => sum + (component.mean[at] as number), 0);
    const variance = covarianceOfSums(component, unknowns, unknowns) + freshVariance(component);
    const skew = component.skews.find((entry) => entry.track === track);
    if (skew === undefined) {
      add(component.weight, mean, variance);
      continue;
    }
    const level = [0, 1 + track];
    const levelVariance = covarianceOfSums(component, level, level);
    const shared = covarianceOfSums(component, unknowns, level);
    const pinned = variance - ((shared * shared) / levelVariance) * (1 - NODE_VARIANCE);
    for (const [k, z] of skewPlaces(skew.weights).entries()) {
      add(
        component.weight * (skew.weights[k] as number),
        mean + (shared / Math.sqrt(levelVariance)) * z,
        pinned,
      );
    }
  }
  return mixture;
}

/** Index that stands for no track in particular. */
export const NO_TRACK = -1;

/** Posterior of one unknown in log metres; `track` as in mixtureOf. */
export const summaryOfUnknown = (
  components: readonly DemandComponent[],
  unknown: number,
  track: number,
): Summary => summaryOfMixture(mixtureOf(components, [unknown], track, () => 0));
