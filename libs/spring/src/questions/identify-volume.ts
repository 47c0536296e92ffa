import { requireNumber, requireWhole, SpringInputError } from '../numerics/input-error.js';
import { leastSquares } from '../numerics/least-squares.js';
import { entry } from '../numerics/entry.js';
import { MOST_SPACERS } from '../unit/air-spring-unit.js';
import { VolumeModel, type PressureRun, type VolumeProcedure, type VolumeSource } from './volume-model.js';

/** Volume of a positive chamber found from workshop readings, or why they do not tell it. */
export type VolumeIdentification =
  | {
      readonly status: 'identified';
      /** At full extension without spacers, m³. */
      readonly positiveVolume: number;
      /** Standard uncertainty, m³. */
      readonly sd: number;
      /** Part of the variance that comes from each source; they add up to 1. */
      readonly shares: Readonly<Record<VolumeSource, number>>;
      /** The source with the largest part: measure that better first. */
      readonly limitedBy: VolumeSource;
      /** Scatter of the readings over that entered for them, 1; above 2 something moved, leaked or cooled. */
      readonly scatter: number;
      /** Each reading against the fit, in its own standard uncertainties, run by run. */
      readonly residuals: readonly number[];
    }
  | {
      readonly status: 'refused';
      readonly reason: 'too-few-travels' | 'no-pressure-rise' | 'not-identifiable' | 'too-uncertain';
      readonly message: string;
      /** Where it is known to be too uncertain: standard uncertainty over volume, 1. */
      readonly relativeSd: number | null;
    };

/**
 * Relative standard uncertainty of the volume beyond which it is refused: 3 % shifts the travel predicted for four
 * spacers by about 1 mm, half of what a ring can be read to.
 */
const LARGEST_RELATIVE_SD = 0.03;
/** Pressures must rise at least by this factor to tell a volume from the scatter of a gauge. */
const LEAST_RATIO = 1.1;

/**
 * Volume of the positive chamber, m³, from pressures read at two or more travels with the pump attached.
 *
 * For two readings V = A·x·r/(r − 1) − V_hose, r = (p₂ + p_a)/(p₁ + p_a); in general by least squares with what is known
 * of bore, hose, zero and spacers beforehand: docs/equations/answers.md#two-readings. Only V/A is told by the readings alone.
 * @throws SpringInputError for readings or uncertainties that cannot be.
 */
export function identifyVolume(procedure: VolumeProcedure): VolumeIdentification {
  validate(procedure);
  const guess = firstGuess(procedure);
  if (typeof guess !== 'number') return guess;
  const model = new VolumeModel(procedure, guess);
  const fit = leastSquares({
    start: model.start,
    steps: model.steps,
    residuals: (parameters) => model.residuals(parameters),
  });
  if (fit.status !== 'found') {
    return refused(
      'not-identifiable',
      'these readings do not tell the volume apart from what else is unknown',
    );
  }
  const residuals = fit.residuals.slice(0, model.readingCount);
  const freedom = fit.residuals.length - fit.parameters.length;
  const scatter = Math.sqrt(fit.residuals.reduce((sum, r) => sum + r * r, 0) / Math.max(1, freedom));
  const relativeSd = Math.sqrt(entry(entry(fit.covariance, 0), 0)) * Math.max(1, scatter);
  const shares = model.contributions(entry(fit.gains, 0));
  const limitedBy = largest(shares);
  if (!(relativeSd <= LARGEST_RELATIVE_SD)) {
    const percent = (100 * relativeSd).toFixed(1);
    const message = `the volume is only known to ${percent} %, limited by ${limitedBy}`;
    return { status: 'refused', reason: 'too-uncertain', message, relativeSd };
  }
  const positiveVolume = model.volume(fit.parameters);
  const total = Object.values(shares).reduce((sum, share) => sum + share, 0);
  return {
    status: 'identified',
    positiveVolume,
    sd: relativeSd * positiveVolume,
    shares: {
      gaugeReadings: shares.gaugeReadings / total,
      travelReadings: shares.travelReadings / total,
      boreArea: shares.boreArea / total,
      hoseVolume: shares.hoseVolume / total,
      gaugeZero: shares.gaugeZero / total,
      spacerVolume: shares.spacerVolume / total,
    },
    limitedBy,
    scatter,
    residuals,
  };
}

type Refusal = Extract<VolumeIdentification, { status: 'refused' }>;

function refused(reason: Refusal['reason'], message: string): Refusal {
  return { status: 'refused', reason, message, relativeSd: null };
}

/** Volume by the two readings of a run that lie farthest apart, averaged over runs; or why there is none. */
function firstGuess(procedure: VolumeProcedure): number | Refusal {
  const { runs, ambientPressure, boreArea, hoseVolume, spacerVolume } = procedure;
  let sum = 0;
  for (const run of runs) {
    const [near, far] = extremes(run);
    if (!(far.travel > near.travel)) {
      return refused('too-few-travels', 'each run needs readings at two travels at least');
    }
    const ratio = (far.gaugePressure + ambientPressure) / (near.gaugePressure + ambientPressure);
    if (!(ratio > LEAST_RATIO)) {
      return refused('no-pressure-rise', 'the pressure hardly rises between the travels of a run');
    }
    const volume = (boreArea.value * (ratio * far.travel - near.travel)) / (ratio - 1);
    sum += volume - hoseVolume.value + run.spacers * spacerVolume.value;
  }
  const guess = sum / runs.length;
  return guess > 0 ? guess : refused('not-identifiable', 'the hose holds more air than the readings allow');
}

function extremes({
  readings,
}: PressureRun): [near: PressureRun['readings'][number], far: PressureRun['readings'][number]] {
  const sorted = [...readings].sort((a, b) => a.travel - b.travel);
  return [entry(sorted, 0), entry(sorted, sorted.length - 1)];
}

function largest(shares: Readonly<Record<VolumeSource, number>>): VolumeSource {
  const sources = Object.keys(shares) as VolumeSource[];
  return sources.reduce((best, source) => (shares[source] > shares[best] ? source : best));
}

function validate(procedure: VolumeProcedure): void {
  const { runs, boreArea, hoseVolume, spacerVolume, gaugeZeroSd } = procedure;
  requireNumber('ambientPressure', procedure.ambientPressure, 'Pa (absolute)', { above: 0 });
  requireNumber('runs.length', runs.length, '(count)', { atLeast: 1 });
  requireNumber('boreArea.value', boreArea.value, 'm²', { above: 0 });
  requireNumber('hoseVolume.value', hoseVolume.value, 'm³', { atLeast: 0 });
  requireNumber('gaugeReadingSd', procedure.gaugeReadingSd, 'Pa', { above: 0 });
  requireNumber('travelSd', procedure.travelSd, 'm', { atLeast: 0 });
  for (const [name, { sd }] of Object.entries({ boreArea, hoseVolume, spacerVolume })) {
    // Infinity: not known at all.
    if (sd !== Infinity) requireNumber(`${name}.sd`, sd, '', { atLeast: 0 });
  }
  if (gaugeZeroSd !== Infinity) requireNumber('gaugeZeroSd', gaugeZeroSd, 'Pa', { atLeast: 0 });
  runs.forEach((run, i) => {
    requireWhole(`runs[${i}].spacers`, run.spacers, 0, MOST_SPACERS);
    if (run.spacers > 0) requireNumber('spacerVolume.value', spacerVolume.value, 'm³', { above: 0 });
    if (run.readings.length === 0) {
      throw new SpringInputError(`runs[${i}].readings`, 0, '(count)', 'at least 1');
    }
    run.readings.forEach(({ travel, gaugePressure }, j) => {
      requireNumber(`runs[${i}].readings[${j}].travel`, travel, 'm', { atLeast: 0 });
      requireNumber(`runs[${i}].readings[${j}].gaugePressure`, gaugePressure, 'Pa (gauge)', { atLeast: 0 });
    });
  });
}
