import {
  DEFAULT_DEMAND_PRIORS,
  exceedance,
  fitDemand,
  predictDemand,
  type DemandFit,
  type DemandReading,
  type ReadingKind,
  type Summary,
} from '@loamledger/evidence';
import { describe, expect, it } from 'vitest';
import { conditionalPosterior } from '../../libs/evidence/src/demand/conditional-posterior.js';
import { designOf } from '../../libs/evidence/src/demand/design.js';
import { summaryOfMixture } from '../../libs/evidence/src/demand/mixture.js';
import { sampleDemand } from './evidence-demand-sampler.js';
import { normals, uniforms } from './evidence-numbers.js';
import { reference } from './evidence-reference.js';

type Posterior = Record<string, Summary & { mc_se: number }>;

const gibbs = reference<{
  priors: Record<'mu0_mean' | 'mu0_sd' | 'halfnormal_sd_track' | 'halfnormal_sd_rider' | 'halfnormal_sd_run', number>;
  data: { rider: number; track: number; logH: number; kind: ReadingKind; readingSd: number }[];
  result: {
    fixed_components: { sdTrack: number; sdRider: number; sdRun: number; posterior: Posterior };
    half_normal_priors: { posterior: Posterior };
  };
}>('hierarchical_censored');

interface Moments {
  mean: number;
  sd: number;
}

interface Components {
  mu: number;
  sd_track: number;
  sd_rider: number;
  sd_noise: number;
}

const small = reference<{
  data: { rows: [track: number, rider: number, logHeight: number, bound: number][] };
  model: {
    prior: Record<
      'mu_mean' | 'mu_sd' | 'sd_track_halfnormal' | 'sd_rider_halfnormal' | 'sd_noise_halfnormal',
      number
    >;
  };
  result: {
    max_marginal_likelihood: Components & {
      logLik: number;
      logLik_at_fixed_point: Components & { value: number };
    };
    full_bayes_quadrature: Record<'mu' | 'sd_track' | 'sd_rider' | 'sd_noise', Moments> & {
      rider_effect: { mean: number[]; sd: number[] };
      cells: Record<string, { mean_linear_predictor: number; sd_predictive_reading: number }>;
      new_rider_on_track: {
        mean: number[];
        sd_predictive_reading: number[];
        prob_reading_above_cut: number[];
        cut: number;
      };
      track0_rider3_prob_reading_above_cut: number;
    };
  };
}>('hier_censored_small');

/** The reference models have no effect of a rider on one track. */
const NO_RIDER_ON_TRACK = { fixedSds: { riderOnTrack: 0 } };

const summaryOf = (fit: DemandFit, who: { riderId?: string; trackId?: string }): Summary =>
  summaryOfMixture(predictDemand(fit, who));

describe('against a long Gibbs run on 19 readings, 9 of them bounds', () => {
  const readings: DemandReading[] = gibbs.data.map((row) => ({
    riderId: `rider${row.rider}`,
    trackId: `track${row.track}`,
    logHeight: row.logH,
    kind: row.kind,
    readingSd: row.readingSd,
  }));
  const priors = {
    muMean: gibbs.priors.mu0_mean,
    muSd: gibbs.priors.mu0_sd,
    trackSdScale: gibbs.priors.halfnormal_sd_track,
    riderSdScale: gibbs.priors.halfnormal_sd_rider,
    riderOnTrackSdScale: DEFAULT_DEMAND_PRIORS.riderOnTrackSdScale,
    runSdScale: gibbs.priors.halfnormal_sd_run,
  };
  const { fixed_components: fixed, half_normal_priors: free } = gibbs.result;
  const cases = [
    {
      name: 'variance components fixed',
      fit: fitDemand(readings, priors, {
        fixedSds: { track: fixed.sdTrack, rider: fixed.sdRider, riderOnTrack: 0, run: fixed.sdRun },
      }),
      expectations: fixed.posterior,
    },
    { name: 'half-normal priors', fit: fitDemand(readings, priors, NO_RIDER_ON_TRACK), expectations: free.posterior },
  ];

  it.each(cases)('$name: means within 4 Monte Carlo errors + 0.02, quantiles within 0.05', ({ fit, expectations }) => {
    const found: Record<string, Summary> = {
      mu: fit.mu,
      sdTrack: fit.sds.track,
      sdRider: fit.sds.rider,
      sdRun: fit.sds.run,
      predict_rider1_track0: summaryOf(fit, { riderId: 'rider1', trackId: 'track0' }),
      predict_newRider_track0: summaryOf(fit, { trackId: 'track0' }),
      predict_rider1_newTrack: summaryOf(fit, { riderId: 'rider1' }),
    };
    for (const level of [...fit.tracks, ...fit.riders]) found[level.id] = level.effect;
    for (const [name, expected] of Object.entries(expectations)) {
      const got = found[name] as Summary;
      expect(Math.abs(got.mean - expected.mean), `${name} mean`).toBeLessThan(4 * expected.mc_se + 0.02);
      for (const quantile of ['q05', 'q50', 'q95'] as const) {
        expect(Math.abs(got[quantile] - expected[quantile]), `${name} ${quantile}`).toBeLessThan(0.05);
      }
    }
  });
});

describe('against brute-force quadrature on 31 readings', () => {
  const readings: DemandReading[] = small.data.rows.map(([track, rider, logHeight, bound]) => ({
    riderId: `${rider}`,
    trackId: `${track}`,
    logHeight,
    kind: bound === 1 ? 'at-least' : 'exact',
    readingSd: 0,
  }));
  const { prior } = small.model;
  const priors = {
    muMean: prior.mu_mean,
    muSd: prior.mu_sd,
    trackSdScale: prior.sd_track_halfnormal,
    riderSdScale: prior.sd_rider_halfnormal,
    riderOnTrackSdScale: DEFAULT_DEMAND_PRIORS.riderOnTrackSdScale,
    runSdScale: prior.sd_noise_halfnormal,
  };
  const fit = fitDemand(readings, priors, NO_RIDER_ON_TRACK);
  const bayes = small.result.full_bayes_quadrature;
  /** The file's own tolerance for exact quadrature, although ours is an approximation; sds 1 % instead of 5 %. */
  const MEAN = 2e-3;
  const SD_SHARE = 0.01;
  const PROBABILITY = 0.02;

  it('mu, standard deviations and rider effects', () => {
    const pairs: [Summary, Moments][] = [
      [fit.mu, bayes.mu],
      [fit.sds.track, bayes.sd_track],
      [fit.sds.rider, bayes.sd_rider],
      [fit.sds.run, bayes.sd_noise],
      ...fit.riders.map((rider, i): [Summary, Moments] => [
        rider.effect,
        { mean: bayes.rider_effect.mean[i] as number, sd: bayes.rider_effect.sd[i] as number },
      ]),
    ];
    for (const [got, expected] of pairs) {
      expect(Math.abs(got.mean - expected.mean)).toBeLessThan(MEAN);
      expect(Math.abs(got.sd / expected.sd - 1)).toBeLessThan(SD_SHARE);
    }
  });

  it('predictions of every rider on every track', () => {
    for (const [name, cell] of Object.entries(bayes.cells)) {
      const [, trackId = '', riderId = ''] = /track(\d)_rider(\d)/.exec(name) ?? [];
      const got = summaryOf(fit, { riderId, trackId });
      expect(Math.abs(got.mean - cell.mean_linear_predictor)).toBeLessThan(MEAN);
      expect(Math.abs(got.sd / cell.sd_predictive_reading - 1)).toBeLessThan(SD_SHARE);
    }
    const known = exceedance(predictDemand(fit, { riderId: '3', trackId: '0' }), bayes.new_rider_on_track.cut);
    expect(Math.abs(known - bayes.track0_rider3_prob_reading_above_cut)).toBeLessThan(PROBABILITY);
  });

  it('a rider who was never seen', () => {
    for (const [i, mean] of bayes.new_rider_on_track.mean.entries()) {
      const distribution = predictDemand(fit, { trackId: `${i}` });
      const got = summaryOfMixture(distribution);
      expect(Math.abs(got.mean - mean)).toBeLessThan(MEAN);
      expect(Math.abs(got.sd / (bayes.new_rider_on_track.sd_predictive_reading[i] as number) - 1)).toBeLessThan(SD_SHARE);
      const above = exceedance(distribution, bayes.new_rider_on_track.cut);
      expect(Math.abs(above - (bayes.new_rider_on_track.prob_reading_above_cut[i] as number))).toBeLessThan(PROBABILITY);
    }
  });

  it('marginal likelihood at two fixed points, to the error of expectation propagation', () => {
    const maximum = small.result.max_marginal_likelihood;
    for (const [at, value] of [
      [maximum, maximum.logLik],
      [maximum.logLik_at_fixed_point, maximum.logLik_at_fixed_point.value],
    ] as const) {
      const sds = { track: at.sd_track, rider: at.sd_rider, riderOnTrack: 0, run: at.sd_noise };
      // mu is a point here; 8 bounds are approximated, each by about 1e-4 in the log.
      const { logEvidence } = conditionalPosterior(designOf(readings), sds, { mean: at.mu, sd: 1e-9 });
      expect(Math.abs(logEvidence - value)).toBeLessThan(1e-3);
    }
  });
});

describe('riders who differ from track to track', () => {
  const normal = normals(uniforms(41));
  const tracks = ['a', 'b', 'c', 'd'];
  const riders = ['1', '2', '3', '4', '5'];
  const readings = tracks.flatMap((trackId, t) =>
    riders.flatMap((riderId, r) => {
      const level = -0.8 + 0.15 * t + 0.05 * r + 0.25 * normal();
      // Rider 5 has never been on track d; everybody else has three to five runs a track.
      return Array.from({ length: t === 3 && r === 4 ? 0 : 3 + ((t + r) % 3) }, (): DemandReading => {
        const logHeight = level + 0.15 * normal();
        const full = -0.2;
        return logHeight > full
          ? { riderId, trackId, logHeight: full, kind: 'at-least', readingSd: 0.05 }
          : { riderId, trackId, logHeight, kind: 'exact', readingSd: 0.05 };
      });
    }),
  );

  it.each([
    { name: 'scatter on single tracks fitted', given: undefined },
    { name: 'scatter on single tracks given', given: 0.3 },
  ])('$name: predicts what an independent sampler does, for the pair that never met too', ({ given }) => {
    const fit = fitDemand(
      readings,
      DEFAULT_DEMAND_PRIORS,
      given === undefined ? {} : { fixedSds: { riderOnTrack: given } },
    );
    expect(fit.riderOnTrackSd).toBe(given === undefined ? 'mostly prior' : 'given');
    const sampler = sampleDemand(readings, DEFAULT_DEMAND_PRIORS, 30_000, 6, given);
    for (const [riderId, trackId] of [
      ['1', 'a'],
      ['3', 'b'],
      ['5', 'c'],
      ['5', 'd'],
    ] as const) {
      const expected = sampler.cell(riderId, trackId);
      const got = summaryOf(fit, { riderId, trackId });
      // Monte Carlo error of 30,000 sweeps that hang together, some 0.005 for means and twice that for quantiles.
      expect(Math.abs(got.mean - expected.level.mean), `${riderId} ${trackId}`).toBeLessThan(0.02);
      expect(Math.abs(got.sd / expected.level.sd - 1), `${riderId} ${trackId}`).toBeLessThan(0.05);
      expect(Math.abs(got.q05 - expected.q05), `${riderId} ${trackId}`).toBeLessThan(0.03);
      expect(Math.abs(got.q95 - expected.q95), `${riderId} ${trackId}`).toBeLessThan(0.03);
    }
  });
});

describe('a track on which every run used the full travel', () => {
  const normal = normals(uniforms(29));
  const tracks = ['a', 'b', 'c', 'd', 'rough'];
  const riders = ['1', '2', '3', '4', '5'];
  const readings: DemandReading[] = [];
  for (const [t, trackId] of tracks.entries()) {
    for (const [r, riderId] of riders.entries()) {
      for (let run = 0; run < 5; run += 1) {
        const logHeight = -0.9 + 0.2 * t + 0.1 * (r - 2) + 0.25 * normal();
        readings.push(
          trackId === 'rough'
            ? { riderId, trackId, logHeight: -0.4, kind: 'at-least', readingSd: 0.05 }
            : { riderId, trackId, logHeight, kind: 'exact', readingSd: 0.05 },
        );
      }
    }
  }
  const fit = fitDemand(readings);

  it('predicts what an independent sampler does, where a normal approximation at the mode falls short', () => {
    const sampler = sampleDemand(readings, DEFAULT_DEMAND_PRIORS, 60_000, 5);
    for (const riderId of ['1', '3', '5']) {
      for (const trackId of ['a', 'rough']) {
        const expected = sampler.cell(riderId, trackId);
        const got = summaryOf(fit, { riderId, trackId });
        // The sampler's own error on the bounded track is about 0.01 between seeds.
        expect(Math.abs(got.mean - expected.level.mean), trackId).toBeLessThan(0.03);
        expect(Math.abs(got.sd / expected.level.sd - 1), trackId).toBeLessThan(0.08);
        expect(Math.abs(got.q05 - expected.q05), trackId).toBeLessThan(0.05);
        expect(Math.abs(got.q95 - expected.q95), trackId).toBeLessThan(0.05);
      }
    }
  });

  it('is marked as known by a lower bound only', () => {
    expect(fit.tracks.find((track) => track.id === 'rough')?.lowerBoundOnly).toBe(true);
    expect(fit.tracks.find((track) => track.id === 'a')?.lowerBoundOnly).toBe(false);
  });
});
