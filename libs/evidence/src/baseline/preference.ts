import { mixtureOf, NO_TRACK } from '../demand/component.js';
import { fitDemand, type DemandFit } from '../demand/fit.js';
import { summaryOfMixture, type Summary } from '../demand/mixture.js';
import { requireBetween, requirePositive } from '../errors.js';

/** What a set-up that was kept felt right with: a reserve in m, or a sag as a share of the stroke. */
export interface KeptValue {
  riderId: string;
  value: number;
}

/** What is believed before any decision was kept, in the unit of the values. */
export interface PreferencePrior {
  mean: number;
  /** How far the team may be from it. */
  sd: number;
  /** How far riders may differ, and how far one rider's kept values scatter: scales of half-normal priors. */
  betweenRiders: number;
  withinRider: number;
}

/** A rider's preference with what it rests on. */
export interface Preference extends Summary {
  source: 'this rider' | 'the team' | 'default';
  counts: { own: number; team: number };
}

/**
 * Prior of the reserve at the 95th-percentile hit, shares of the stroke, around the usual wish: a team nobody knows
 * 0.06 from it (10 mm of a fork), riders 0.03 apart, each within 0.03 of itself: 5 mm of a fork, since a ring reads to
 * 2 mm and a set-up is not kept for its reserve alone (judgement, no source).
 */
const RESERVE_SDS = { sd: 0.06, betweenRiders: 0.03, withinRider: 0.03 };

/**
 * What riders want, learned from kept decisions, in the unit of the values; one fit for all of them.
 *
 * value = team mean + rider + scatter, partially pooled: a rider with few decisions is drawn towards the team, a team
 * with few towards the prior. The model is the demand model with one track and no bounds (docs/evidence/demand.md).
 * `kept` holds the whole team's. Throws EvidenceInputError for values that are not finite and scales that are not > 0.
 */
export function learnPreferences(
  kept: readonly KeptValue[],
  prior: PreferencePrior,
): (riderId: string) => Preference {
  requirePositive('prior.sd', prior.sd, 'unit of the values');
  requirePositive('prior.betweenRiders', prior.betweenRiders, 'unit of the values');
  requirePositive('prior.withinRider', prior.withinRider, 'unit of the values');
  // The model's own scales are of the order of 1: values are counted in prior sds from the prior mean.
  const scaled = (value: number): number => (value - prior.mean) / prior.sd;
  const fit = fitDemand(
    kept.map(({ riderId: rider, value }) => ({
      riderId: rider,
      trackId: '',
      logHeight: scaled(value),
      kind: 'exact',
      readingSd: 0,
    })),
    {
      muMean: 0,
      muSd: 1,
      trackSdScale: 1,
      riderSdScale: prior.betweenRiders / prior.sd,
      riderOnTrackSdScale: 1,
      runSdScale: prior.withinRider / prior.sd,
    },
    { fixedSds: { track: 0, riderOnTrack: 0 } },
  );
  return (riderId) => preferenceIn(fit, riderId, kept, prior);
}

function preferenceIn(
  fit: DemandFit,
  riderId: string,
  kept: readonly KeptValue[],
  prior: PreferencePrior,
): Preference {
  const rider = fit.riders.findIndex(({ id }) => id === riderId);
  const unknowns = rider < 0 ? [0] : [0, 1 + fit.tracks.length + rider];
  const fresh = rider < 0 ? 1 : 0;
  const summary = summaryOfMixture(
    mixtureOf(
      fit.components,
      { unknowns, track: NO_TRACK, pair: null },
      ({ variances }) => fresh * variances.rider,
    ),
  );
  const own = kept.filter((entry) => entry.riderId === riderId).length;
  const back = (value: number): number => prior.mean + prior.sd * value;
  return {
    mean: back(summary.mean),
    sd: prior.sd * summary.sd,
    q05: back(summary.q05),
    q50: back(summary.q50),
    q95: back(summary.q95),
    source: own > 0 ? 'this rider' : kept.length > 0 ? 'the team' : 'default',
    counts: { own, team: kept.length },
  };
}

/** The prior of a share of the stroke that should be left at the 95th-percentile hit, around the usual wish. */
export const reservePrior = (usual: number): PreferencePrior => ({ mean: usual, ...RESERVE_SDS });

/** The prior of sag as a share of the stroke, around the usual band. */
export function sagPrior(usual: Band): PreferencePrior {
  requireBand(usual);
  const half = (usual.max - usual.min) / 2;
  return { mean: usual.min + half, sd: half, betweenRiders: half, withinRider: half };
}

/** Kept decisions from which a rider's own sag is taken instead of the usual band (judgement, as for evidence levels). */
const DECISIONS_FOR_OWN_BAND = 3;

/**
 * Sag band of a rider, shares of the stroke: the usual band, moved so that its middle is what the rider has kept, once
 * three decisions show it; the width stays. `sag` is the rider's preference learned with sagPrior.
 */
export function preferredSagBand(sag: Preference, usual: Band): Band {
  requireBand(usual);
  if (sag.counts.own < DECISIONS_FOR_OWN_BAND) return usual;
  const half = (usual.max - usual.min) / 2;
  const centre = Math.min(1 - half, Math.max(half, sag.mean));
  return { min: centre - half, max: centre + half };
}

/** Shares of the stroke. */
interface Band {
  min: number;
  max: number;
}

/** A band of no width has no scale to learn with. */
function requireBand(band: Band): void {
  requireBetween('usual.min', band.min, 'share of stroke', 0, 1);
  requireBetween('usual.max', band.max, 'share of stroke', band.min, 1);
}
