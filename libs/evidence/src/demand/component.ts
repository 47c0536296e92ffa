import { summaryOfMixture, type NormalMixture, type Summary } from './mixture.js';
import { levelWithEffect, type LevelForm } from './pair-effects.js';
import { NODE_VARIANCE, skewPlaces } from './track-skew.js';

/** One part of the posterior mixture: normal over mu and all effects, with the random parts' variances. */
export interface DemandComponent {
  weight: number;
  /** Means of mu, track effects, rider effects, condition effects, log metres. */
  mean: number[];
  /** Lower triangle of their covariance by rows, (log m)². */
  covariance: number[];
  /** Of a new track, a new rider, a rider new to a track, a new run, (log m)². */
  variances: { track: number; rider: number; riderOnTrack: number; run: number };
  /** Effects of riders on single tracks, in the order of DemandFit.pairs. */
  effects: PairEffect[];
  /** Tracks that rest on bounds, by index, with the weights of the nodes along their level. */
  skews: { track: number; weights: number[] }[];
}

/**
 * Effect of a rider on one track given the other unknowns: normal with mean offset − Σ pull·η over the grounds ridden
 * there (η = mu + track + rider + condition), log metres, and this variance, (log m)².
 */
export interface PairEffect {
  offset: number;
  variance: number;
  /** One a ground, in the order of the pair's grounds. */
  pulls: number[];
}

/** What adds up to a level that is asked for. */
export interface LevelParts {
  /** Unknowns, numbered as in DemandComponent.mean. */
  unknowns: readonly number[];
  /** The track whose skewness matters, an index; NO_TRACK for none. */
  track: number;
  /** A pair with readings: its index, and the unknowns of each of its grounds; null for none. */
  pair: { index: number; cells: readonly (readonly number[])[] } | null;
}

const covarianceOf = (component: DemandComponent, a: number, b: number): number => {
  const [row, column] = a >= b ? [a, b] : [b, a];
  return component.covariance[(row * (row + 1)) / 2 + column] as number;
};

/** Covariance of a level with one unknown, (log m)². */
export const covarianceWith = (component: DemandComponent, form: LevelForm, unknown: number): number =>
  form.unknowns.reduce(
    (sum, at, k) => sum + (form.factors[k] as number) * covarianceOf(component, at, unknown),
    0,
  );

const sumOver = (form: LevelForm, value: (unknown: number) => number): number =>
  form.unknowns.reduce((sum, at, k) => sum + (form.factors[k] as number) * value(at), 0);

/** A level as a linear form in the unknowns of one part of the mixture. */
export const formIn = (component: DemandComponent, { unknowns, pair }: LevelParts): LevelForm =>
  pair === null
    ? { unknowns, factors: unknowns.map(() => 1), offset: 0, variance: 0 }
    : levelWithEffect(unknowns, pair.cells, component.effects[pair.index] as PairEffect);

/** Mean (log metres) and variance ((log m)²) of a level in one part of the mixture. */
export const momentsIn = (
  component: DemandComponent,
  form: LevelForm,
): { mean: number; variance: number } => ({
  mean: form.offset + sumOver(form, (at) => component.mean[at] as number),
  variance: form.variance + sumOver(form, (at) => covarianceWith(component, form, at)),
});

/** Distribution of a level and a fresh normal draw added to it, log metres. */
export function mixtureOf(
  components: readonly DemandComponent[],
  parts: LevelParts,
  freshVariance: (component: DemandComponent) => number,
): NormalMixture {
  const mixture: NormalMixture = { weights: [], means: [], sds: [] };
  const add = (weight: number, mean: number, variance: number): void => {
    mixture.weights.push(weight);
    mixture.means.push(mean);
    mixture.sds.push(Math.sqrt(variance));
  };
  for (const component of components) {
    const form = formIn(component, parts);
    const { mean, variance: ofLevel } = momentsIn(component, form);
    const variance = ofLevel + freshVariance(component);
    const skew = component.skews.find((entry) => entry.track === parts.track);
    if (skew === undefined) {
      add(component.weight, mean, variance);
      continue;
    }
    const level = formIn(component, { unknowns: [0, 1 + parts.track], track: parts.track, pair: null });
    const levelVariance = momentsIn(component, level).variance;
    const shared = sumOver(form, (at) => covarianceWith(component, level, at));
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

/** Posterior of one unknown in log metres; `track` as in LevelParts. */
export const summaryOfUnknown = (
  components: readonly DemandComponent[],
  unknown: number,
  track: number,
): Summary => summaryOfMixture(mixtureOf(components, { unknowns: [unknown], track, pair: null }, () => 0));
