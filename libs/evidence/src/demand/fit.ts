import { NO_TRACK, summaryOfUnknown, type DemandComponent } from './component.js';
import { condense } from './condense.js';
import { designOf, type DemandDesign } from './design.js';
import type { Summary } from './mixture.js';
import {
  DEFAULT_DEMAND_PRIORS,
  DEMAND_MODEL_VERSION,
  requirePriors,
  requireReadings,
  type DemandPriors,
  type DemandReading,
  type FixedSds,
} from './reading.js';
import { tellsRiderOnTrack } from './rider-on-track.js';
import { sdLattice } from './sd-lattice.js';
import { summaryOfSd } from './sd-summary.js';

/** What may be laid down beforehand. */
export interface DemandFitOptions {
  fixedSds?: FixedSds;
}

/** Below this number of exact readings a track's level rests on bounds and the prior (three: judgement, no source). */
export const FEWEST_EXACT_READINGS = 3;

/** Posterior of one track or rider, as its effect around mu in log metres, with what it rests on. */
export interface LevelSummary {
  id: string;
  effect: Summary;
  readings: number;
  exact: number;
  atLeast: number;
  atMost: number;
  /** Fewer than three exact readings: say "at least", never a level. */
  lowerBoundOnly: boolean;
}

/** Posterior of the demand model as plain JSON. */
export interface DemandFit {
  modelVersion: string;
  status: 'converged' | 'prior-only' | 'not-converged';
  message: string;
  counts: {
    readings: number;
    exact: number;
    atLeast: number;
    atMost: number;
    riders: number;
    tracks: number;
    /** Readings taken in one by one since the last full fit. */
    added: number;
    mixturePoints: number;
    posteriorEvaluations: number;
  };
  priors: DemandPriors;
  mu: Summary;
  sds: { track: Summary; rider: Summary; riderOnTrack: Summary; run: Summary };
  /** Whether the runs can tell the sd of the effects of riders on single tracks, or it is mostly what was believed before. */
  riderOnTrackSd: 'told by runs' | 'mostly prior' | 'given';
  tracks: LevelSummary[];
  riders: LevelSummary[];
  /** Effects of other ground than the reference condition. */
  conditions: LevelSummary[];
  /** Riders with readings on a track, by index; grounds are indices of conditions, −1 the reference ground. */
  pairs: { track: number; rider: number; grounds: number[] }[];
  components: DemandComponent[];
}

/**
 * Posterior of the team's hit heights, in log metres.
 *
 * log h = mu + track + rider + rider-on-track + condition + run + reading error; track ~ N(0, s_t²), rider ~ N(0, s_r²),
 * rider-on-track ~ N(0, s_i²), condition ~ N(0, 0.15²) and 0 for the reference ground, run ~ N(0, s_e²), the reading
 * error with its known sd; mu normal and the sds half-normal a priori. Where few
 * riders share tracks, s_i is mostly its prior's, and said to be. A reading of kind 'at-least' adds
 * P(reading ≥ logHeight), one of kind 'at-most' P(reading ≤ logHeight) (tobin1958). Integration over the sds on a
 * lattice (rue2009), within it expectation propagation for the bounds (minka2001): docs/evidence/demand.md.
 * Any number of readings, none included (status 'prior-only'). The order of the readings has no influence.
 * Throws EvidenceInputError for a reading or prior that is not finite.
 */
export function fitDemand(
  readings: readonly DemandReading[],
  priors: DemandPriors = DEFAULT_DEMAND_PRIORS,
  options: DemandFitOptions = {},
): DemandFit {
  const fixed = options.fixedSds ?? {};
  requirePriors(priors);
  requireReadings(readings, fixed);
  const design = designOf(readings);
  const trackCounts = countsOfEach(design.tracks, readings, (reading) => reading.trackId);
  const riderCounts = countsOfEach(design.riders, readings, (reading) => reading.riderId);
  const conditionCounts = countsOfEach(design.conditions, readings, (reading) => reading.condition);
  const skewed = [...trackCounts.keys()].filter((i) => isSkewed(trackCounts[i]));
  const lattice = sdLattice(design, priors, fixed, skewed);
  const components = condense(design, lattice.points, skewed);
  const { exact, atLeast, atMost } = countsOf(readings);
  const settled = lattice.unsettled === 0;
  return {
    modelVersion: DEMAND_MODEL_VERSION,
    status: settled ? (readings.length > 0 ? 'converged' : 'prior-only') : 'not-converged',
    message: messageOf(readings.length, lattice.unsettled, lattice.evaluations),
    counts: {
      readings: readings.length,
      exact,
      atLeast,
      atMost,
      riders: design.riders.length,
      tracks: design.tracks.length,
      added: 0,
      mixturePoints: components.length,
      posteriorEvaluations: lattice.evaluations,
    },
    priors,
    mu: summaryOfUnknown(components, 0, NO_TRACK),
    sds: {
      track: summaryOfSd(lattice, 'track'),
      rider: summaryOfSd(lattice, 'rider'),
      riderOnTrack: summaryOfSd(lattice, 'riderOnTrack'),
      run: summaryOfSd(lattice, 'run'),
    },
    riderOnTrackSd: sourceOfRiderOnTrackSd(design, fixed),
    tracks: design.tracks.map((id, i) => ({
      id,
      effect: summaryOfUnknown(components, 1 + i, i),
      ...(trackCounts[i] as ReadingCounts),
    })),
    riders: design.riders.map((id, i) => ({
      id,
      effect: summaryOfUnknown(components, 1 + design.tracks.length + i, NO_TRACK),
      ...(riderCounts[i] as ReadingCounts),
    })),
    conditions: design.conditions.map((id, i) => ({
      id,
      effect: summaryOfUnknown(components, 1 + design.tracks.length + design.riders.length + i, NO_TRACK),
      ...(conditionCounts[i] as ReadingCounts),
    })),
    pairs: design.pairs.map(({ track, rider, grounds }) => ({ track, rider, grounds: [...grounds] })),
    components,
  };
}

function sourceOfRiderOnTrackSd(design: DemandDesign, fixed: FixedSds): DemandFit['riderOnTrackSd'] {
  if (fixed.riderOnTrack !== undefined) return 'given';
  return tellsRiderOnTrack(design) ? 'told by runs' : 'mostly prior';
}

type ReadingCounts = Omit<LevelSummary, 'id' | 'effect'>;

function countsOf(readings: readonly DemandReading[]): ReadingCounts {
  const counts = { exact: 0, 'at-least': 0, 'at-most': 0 };
  for (const { kind } of readings) counts[kind] += 1;
  return {
    readings: readings.length,
    exact: counts.exact,
    atLeast: counts['at-least'],
    atMost: counts['at-most'],
    lowerBoundOnly: counts.exact < FEWEST_EXACT_READINGS,
  };
}

/** Counts of the readings of each of some riders, tracks or grounds. */
function countsOfEach(
  ids: readonly string[],
  readings: readonly DemandReading[],
  idOf: (reading: DemandReading) => string | undefined,
): ReadingCounts[] {
  const groups = new Map<string | undefined, DemandReading[]>(ids.map((id) => [id, []]));
  for (const reading of readings) groups.get(idOf(reading))?.push(reading);
  return ids.map((id) => countsOf(groups.get(id) ?? []));
}

/** Bounds and too few values beside them: a normal distribution of the level would be wrong. */
const isSkewed = (counts: ReadingCounts | undefined): boolean =>
  counts !== undefined && counts.lowerBoundOnly && counts.atLeast + counts.atMost > 0;

function messageOf(readings: number, unsettled: number, evaluations: number): string {
  if (unsettled > 0) {
    return `${unsettled} of ${evaluations} inner solutions did not settle; the intervals may be off.`;
  }
  if (readings === 0) return 'No readings yet: what is predicted is the prior alone.';
  return `Fitted to ${readings} readings.`;
}
