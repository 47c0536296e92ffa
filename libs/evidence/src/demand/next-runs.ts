import { requireNotNegative, requirePositive } from '../errors.js';
import { covarianceWith, formIn, momentsIn, type DemandComponent } from './component.js';
import type { DemandFit } from './fit.js';
import { mixtureQuantile, SUMMARY_LEVELS, type NormalMixture } from './mixture.js';
import { CONDITION_SD } from './reading.js';
import { unknownsOfRun, type RunOf, type RunUnknowns } from './run-unknowns.js';

/** Runs that could be ridden next, each with one exact ring reading. */
export interface NextRuns {
  run: RunOf;
  count: number;
  /** Standard deviation of their reading error, log metres, ≥ 0. */
  readingSd: number;
}

/** 90 % interval, log metres. */
export interface HitInterval {
  low: number;
  high: number;
}

/** Standard normal quantile of 0.95. */
const NORMAL_95 = 1.6448536269514722;

/** Shares of the outcomes that each expectation is averaged over: the middles of five equally probable fifths. */
const OUTCOMES = [0.1, 0.3, 0.5, 0.7, 0.9];

/** Where the 95th-percentile hit of a rider's runs lies: q = level + 1.645·run sd over the fit; log metres. */
export function highHitInterval(fit: DemandFit, who: RunOf): HitInterval {
  return intervalOf({
    weights: fit.components.map(({ weight }) => weight),
    means: fit.components.map((component) => levelsIn(fit, component, who, who).mean + highOf(component)),
    sds: fit.components.map((component) => Math.sqrt(levelsIn(fit, component, who, who).variance)),
  });
}

/**
 * Where that hit will lie after more runs, both ends in expectation; log metres.
 *
 * For each of five equally probable values of the runs' mean reading, every part of the mixture is updated by Bayes'
 * rule for a normal distribution: v' = v − c²/u, u = w + (run² + reading²)/n, with v the variance of the level in
 * question, w that of the level ridden and c their covariance, and weighed anew by how well it foretold that mean;
 * the ends of the five intervals are averaged. What the runs' own scatter tells of the run sd is left out.
 * Tracks that rest on bounds count with the mean and variance of their level, without its skewness.
 * Throws EvidenceInputError for count ≤ 0 or readingSd < 0.
 */
export function expectedHighHitInterval(fit: DemandFit, who: RunOf, next: NextRuns): HitInterval {
  const { run, count, readingSd } = next;
  requirePositive('next.count', count, 'runs');
  requireNotNegative('next.readingSd', readingSd, 'log m');
  const parts = fit.components.map((component) => {
    const asked = levelsIn(fit, component, who, run);
    const ridden = levelsIn(fit, component, run, run);
    const spread = ridden.variance + (component.variances.run + readingSd ** 2) / count;
    return { component, asked, ridden, spread };
  });
  const meanReading: NormalMixture = {
    weights: parts.map(({ component }) => component.weight),
    means: parts.map(({ ridden }) => ridden.mean),
    sds: parts.map(({ spread }) => Math.sqrt(spread)),
  };
  const intervals = OUTCOMES.map((share) => intervalOf(given(parts, mixtureQuantile(meanReading, share))));
  const average = (end: keyof HitInterval): number =>
    intervals.reduce((sum, interval) => sum + interval[end], 0) / intervals.length;
  return { low: average('low'), high: average('high') };
}

interface Part {
  component: DemandComponent;
  asked: Levels;
  ridden: Levels;
  /** Variance of the runs' mean reading, (log m)². */
  spread: number;
}

/** The 95th-percentile hit in question when the mean reading of the runs is known. */
function given(parts: readonly Part[], meanReading: number): NormalMixture {
  const logWeights = parts.map(
    ({ component, ridden, spread }) =>
      Math.log(component.weight) - 0.5 * (Math.log(spread) + (meanReading - ridden.mean) ** 2 / spread),
  );
  const most = Math.max(...logWeights);
  const raw = logWeights.map((logWeight) => Math.exp(logWeight - most));
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  return {
    weights: raw.map((weight) => weight / total),
    means: parts.map(
      ({ component, asked, ridden, spread }) =>
        asked.mean + (asked.shared / spread) * (meanReading - ridden.mean) + highOf(component),
    ),
    sds: parts.map(({ asked, spread }) =>
      Math.sqrt(Math.max(0, asked.variance - asked.shared ** 2 / spread)),
    ),
  };
}

const intervalOf = (mixture: NormalMixture): HitInterval => ({
  low: mixtureQuantile(mixture, SUMMARY_LEVELS.q05),
  high: mixtureQuantile(mixture, SUMMARY_LEVELS.q95),
});

const highOf = ({ variances }: DemandComponent): number => NORMAL_95 * Math.sqrt(variances.run);

interface Levels {
  mean: number;
  variance: number;
  shared: number;
}

/** Mean and variance of a run's level in one part of the mixture, and its covariance with the level of another run. */
function levelsIn(fit: DemandFit, component: DemandComponent, who: RunOf, other: RunOf): Levels {
  const run = unknownsOfRun(fit, who);
  const otherRun = unknownsOfRun(fit, other);
  const form = formIn(component, run);
  const otherForm = formIn(component, otherRun);
  const { mean, variance } = momentsIn(component, form);
  const isSamePair = run.pair !== null && run.pair.index === otherRun.pair?.index;
  const shared = otherForm.unknowns.reduce(
    (sum, at, k) => sum + (otherForm.factors[k] as number) * covarianceWith(component, form, at),
    isSamePair ? form.variance : 0,
  );
  return {
    mean,
    variance: variance + freshShared(run.unseen, component, who, who),
    shared: shared + freshShared(run.unseen, component, who, other),
  };
}

/** Variance of what two runs have in common that the fit has not seen, (log m)². */
function freshShared(
  unseen: RunUnknowns['unseen'],
  { variances }: DemandComponent,
  a: RunOf,
  b: RunOf,
): number {
  const isSameTrack = a.trackId === b.trackId;
  const isSameRider = a.riderId === b.riderId;
  return (
    (unseen.track && isSameTrack ? variances.track : 0) +
    (unseen.rider && isSameRider ? variances.rider : 0) +
    (unseen.riderOnTrack && isSameTrack && isSameRider ? variances.riderOnTrack : 0) +
    (unseen.condition && a.condition === b.condition ? CONDITION_SD ** 2 : 0)
  );
}
