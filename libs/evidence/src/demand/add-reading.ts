import { EvidenceInputError } from '../errors.js';
import { logNormalCdf } from '../numerics/normal.js';
import { moveFactors, noFactors } from './bound-factor.js';
import {
  covarianceWith,
  formIn,
  momentsIn,
  NO_TRACK,
  summaryOfUnknown,
  type DemandComponent,
  type PairEffect,
} from './component.js';
import { FEWEST_EXACT_READINGS, type DemandFit, type LevelSummary } from './fit.js';
import {
  CONDITION_SD,
  DEMAND_MODEL_VERSION,
  REFERENCE_CONDITION,
  requireReadings,
  type DemandReading,
} from './reading.js';
import { placesOf, unknownsOfRun, type RunUnknowns } from './run-unknowns.js';

/** A fit with one reading more, or why the readings have to be fitted anew; then `fit` is the one given. */
export interface AddedReading {
  status: 'updated' | 'refit needed';
  message: string;
  fit: DemandFit;
}

/** Share of the fitted readings that may be added before the lattice of the sds has to move (judgement). */
const LARGEST_ADDED_SHARE = 0.1;
/** Parts that must still carry weight, counted as 1/Σw²; below, the stored parts no longer cover the posterior (judgement). */
const FEWEST_CARRYING_PARTS = 8;

/**
 * Takes one reading into a stored fit, at a cost that does not grow with the readings behind it; levels in log metres.
 *
 * In each part of the mixture: an exact reading is Bayes' rule for a normal distribution, a bound is matched in mean
 * and variance (minka2001); the parts are weighed anew by how well they foretold the reading; a new rider or track
 * joins with its prior variance. docs/evidence/demand.md, D12. The summaries of the sds stay those of the last fit.
 * A refit is asked for after a tenth of the readings, where parts degenerate, and on tracks that rest on bounds.
 * The result depends on the order of the readings since the last fit: for what-if questions and long histories, not for
 * answers that are stored and have to be found again (docs/decisions/0009).
 */
export function addReading(fit: DemandFit, reading: DemandReading): AddedReading {
  if (fit.modelVersion !== DEMAND_MODEL_VERSION) {
    throw new EvidenceInputError('fit.modelVersion', fit.modelVersion, 'version', DEMAND_MODEL_VERSION);
  }
  requireReadings([reading], {});
  const refit = (message: string): AddedReading => ({ status: 'refit needed', message, fit });
  const fitted = fit.counts.readings - fit.counts.added;
  if (fit.counts.added + 1 > LARGEST_ADDED_SHARE * fitted) return refit('A tenth of the readings is new.');
  const known = fit.tracks.find(({ id }) => id === reading.trackId);
  const bounds = (known === undefined ? 0 : known.atLeast + known.atMost) + Number(reading.kind !== 'exact');
  if (bounds > 0 && (known?.exact ?? 0) < FEWEST_EXACT_READINGS) {
    return refit('The track rests on bounds, whose skewness only a full fit sees.');
  }
  const grown = withLevels(fit, reading);
  const run = unknownsOfRun(grown, reading);
  const ground = groundInPair(grown, reading);
  const updated = grown.components.map((component) => condition(component, run, ground, reading));
  const most = Math.max(...updated.map(({ logWeight }) => logWeight));
  const raw = updated.map(({ logWeight }) => Math.exp(logWeight - most));
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  const components = updated.map(({ component }, k) => ({
    ...component,
    weight: (raw[k] as number) / total,
  }));
  const carrying = 1 / components.reduce((sum, { weight }) => sum + weight * weight, 0);
  if (carrying < Math.min(FEWEST_CARRYING_PARTS, fit.components.length)) {
    return refit('The reading moves the scatter beyond what the stored parts cover.');
  }
  const first = 1 + grown.tracks.length;
  return {
    status: 'updated',
    message: 'One reading taken in.',
    fit: {
      ...grown,
      counts: {
        ...grown.counts,
        ...counted(grown.counts, reading),
        tracks: grown.tracks.length,
        riders: grown.riders.length,
        added: fit.counts.added + 1,
      },
      mu: summaryOfUnknown(components, 0, NO_TRACK),
      tracks: grown.tracks.map((level, i) =>
        relevel(level, reading, level.id === reading.trackId, summaryOfUnknown(components, 1 + i, i)),
      ),
      riders: grown.riders.map((level, i) =>
        relevel(
          level,
          reading,
          level.id === reading.riderId,
          summaryOfUnknown(components, first + i, NO_TRACK),
        ),
      ),
      conditions: grown.conditions.map((level, i) =>
        relevel(
          level,
          reading,
          level.id === reading.condition,
          summaryOfUnknown(components, first + grown.riders.length + i, NO_TRACK),
        ),
      ),
      components,
    },
  };
}

interface Kinds {
  readings: number;
  exact: number;
  atLeast: number;
  atMost: number;
}

const counted = ({ readings, exact, atLeast, atMost }: Kinds, { kind }: DemandReading): Kinds => ({
  readings: readings + 1,
  exact: exact + Number(kind === 'exact'),
  atLeast: atLeast + Number(kind === 'at-least'),
  atMost: atMost + Number(kind === 'at-most'),
});

function relevel(
  level: LevelSummary,
  reading: DemandReading,
  isIts: boolean,
  effect: LevelSummary['effect'],
): LevelSummary {
  if (!isIts) return { ...level, effect };
  const counts = counted(level, reading);
  return { id: level.id, effect, ...counts, lowerBoundOnly: counts.exact < FEWEST_EXACT_READINGS };
}

/** The fit with the reading's rider, track and ground among its levels. */
function withLevels(fit: DemandFit, reading: DemandReading): DemandFit {
  const { riderId, trackId, condition } = reading;
  const nobody = { readings: 0, exact: 0, atLeast: 0, atMost: 0, lowerBoundOnly: true };
  const still = { mean: 0, sd: 0, q05: 0, q50: 0, q95: 0 };
  let { tracks, riders, conditions, components } = fit;
  if (!tracks.some(({ id }) => id === trackId)) {
    components = components.map((component) =>
      withUnknown(component, 1 + tracks.length, component.variances.track),
    );
    tracks = [...tracks, { id: trackId, effect: still, ...nobody }];
  }
  if (!riders.some(({ id }) => id === riderId)) {
    const last = 1 + tracks.length + riders.length;
    components = components.map((component) => withUnknown(component, last, component.variances.rider));
    riders = [...riders, { id: riderId, effect: still, ...nobody }];
  }
  const isOther = condition !== undefined && condition !== REFERENCE_CONDITION;
  if (isOther && !conditions.some(({ id }) => id === condition)) {
    const last = 1 + tracks.length + riders.length + conditions.length;
    components = components.map((component) => withUnknown(component, last, CONDITION_SD ** 2));
    conditions = [...conditions, { id: condition, effect: still, ...nobody }];
  }
  return withPair({ ...fit, tracks, riders, conditions, components }, reading);
}

/** The fit with the reading's rider on its track and ground among its pairs. */
function withPair(fit: DemandFit, reading: DemandReading): DemandFit {
  const { track, rider, pair: index, ground } = placesOf(fit, reading);
  const pair = fit.pairs[index];
  if (pair?.grounds.includes(ground) === true) return fit;
  if (pair === undefined) {
    const components = fit.components.map((component) => ({
      ...component,
      effects: [...component.effects, { offset: 0, variance: component.variances.riderOnTrack, pulls: [0] }],
    }));
    return { ...fit, pairs: [...fit.pairs, { track, rider, grounds: [ground] }], components };
  }
  const components = fit.components.map((component) => ({
    ...component,
    effects: component.effects.map((effect, p) =>
      p === index ? { ...effect, pulls: [...effect.pulls, 0] } : effect,
    ),
  }));
  const pairs = fit.pairs.map((other, p) =>
    p === index ? { ...pair, grounds: [...pair.grounds, ground] } : other,
  );
  return { ...fit, pairs, components };
}

/** Place of the reading's ground among those of its pair. */
function groundInPair(fit: DemandFit, reading: DemandReading): number {
  const { pair, ground } = placesOf(fit, reading);
  return fit.pairs[pair]?.grounds.indexOf(ground) ?? 0;
}

const at = (row: number, column: number): number =>
  row >= column ? (row * (row + 1)) / 2 + column : (column * (column + 1)) / 2 + row;

/** A component with an unknown of mean 0 and its own variance put in at one place. */
function withUnknown(component: DemandComponent, place: number, variance: number): DemandComponent {
  const mean = [...component.mean.slice(0, place), 0, ...component.mean.slice(place)];
  const before = (i: number): number => (i < place ? i : i - 1);
  const covariance: number[] = [];
  for (let i = 0; i < mean.length; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      const isNew = i === place || j === place;
      covariance.push(
        isNew ? (i === j ? variance : 0) : (component.covariance[at(before(i), before(j))] as number),
      );
    }
  }
  return { ...component, mean, covariance };
}

/** A component given one reading of a run of its fit, with the log of its new weight; `ground` as in groundInPair. */
function condition(
  component: DemandComponent,
  run: RunUnknowns,
  ground: number,
  reading: DemandReading,
): { component: DemandComponent; logWeight: number } {
  const n = component.mean.length;
  const form = formIn(component, run);
  const gain = component.mean.map((_, i) => covarianceWith(component, form, i));
  const level = momentsIn(component, form);
  const noise = component.variances.run + reading.readingSd ** 2;
  const { precision, shift, logLikelihood } = factorOf(reading, noise, level);
  const share = 1 / (1 + precision * level.variance);
  const pull = (shift - precision * level.mean) * share;
  const bend = precision * share;
  const covariance: number[] = [];
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      covariance.push(
        (component.covariance[at(i, j)] as number) - bend * (gain[i] as number) * (gain[j] as number),
      );
    }
  }
  const mean = component.mean.map((value, i) => value + pull * (gain[i] as number));
  const effects = component.effects.map((effect, p) =>
    p === run.pair?.index ? withFactor(effect, ground, precision, shift) : effect,
  );
  return {
    component: { ...component, mean, covariance, effects },
    logWeight: Math.log(component.weight) + logLikelihood,
  };
}

/** Factor exp(shift·level − ½ precision·level²) that stands for a reading, and the log of its chance beforehand. */
function factorOf(
  reading: DemandReading,
  noise: number,
  level: { mean: number; variance: number },
): { precision: number; shift: number; logLikelihood: number } {
  const root = Math.sqrt(level.variance + noise);
  const z = (reading.logHeight - level.mean) / root;
  if (reading.kind === 'exact') {
    const precision = 1 / noise;
    return { precision, shift: precision * reading.logHeight, logLikelihood: -0.5 * z * z - Math.log(root) };
  }
  const side = reading.kind === 'at-least' ? 1 : -1;
  const bound = {
    limit: Float64Array.of(reading.logHeight),
    variance: Float64Array.of(noise),
    side: Int8Array.of(side),
  };
  const factors = noFactors(1);
  moveFactors(bound, factors, { first: 0, last: 1 }, level.mean, level.variance);
  const logLikelihood = logNormalCdf(-side * z).value;
  return { precision: factors.precision[0] as number, shift: factors.shift[0] as number, logLikelihood };
}

/** A pair's effect, given the other unknowns, after a factor on its level on one ground; equation D12. */
function withFactor(effect: PairEffect, ground: number, precision: number, shift: number): PairEffect {
  const share = 1 / (1 + precision * effect.variance);
  return {
    offset: share * (effect.offset + effect.variance * shift),
    variance: share * effect.variance,
    pulls: effect.pulls.map((pull, k) => share * (pull + Number(k === ground) * precision * effect.variance)),
  };
}
