import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EvidenceInputError } from '../errors.js';
import { fitDemand } from './fit.js';
import { summaryOfMixture } from './mixture.js';
import { exceedance, predictDemand, predictiveQuantile } from './predict.js';
import { DEFAULT_DEMAND_PRIORS, type DemandReading } from './reading.js';

const ids = (prefix: string, count: number) =>
  fc.integer({ min: 1, max: count }).map((number) => `${prefix}${number}`);

const reading: fc.Arbitrary<DemandReading> = fc.record({
  riderId: ids('rider ', 3),
  trackId: ids('track ', 3),
  logHeight: fc.double({ min: -2, max: 0.5, noNaN: true }),
  kind: fc.constantFrom('exact', 'exact', 'exact', 'at-least', 'at-most'),
  readingSd: fc.double({ min: 0.03, max: 0.2, noNaN: true }),
});
const teams = fc.array(reading, { minLength: 0, maxLength: 25 });
/** A fit takes some 20 ms, so properties look at fewer teams than fast-check's hundred. */
const FEW = { numRuns: 25 };

describe('a fit', () => {
  it('works with no readings at all and then says what the prior says', () => {
    const fit = fitDemand([]);
    expect(fit.status).toBe('prior-only');
    expect(fit.counts.readings).toBe(0);
    const summary = summaryOfMixture(predictDemand(fit, { riderId: 'anyone' }));
    expect(summary.mean).toBeCloseTo(DEFAULT_DEMAND_PRIORS.muMean, 9);
    // Variances add up: mu 1², half-normal sds with mean squares 0.5², 0.3², 0.3²; 1 % for the lattice's cut tails.
    expect(summary.sd / Math.sqrt(1 + 0.25 + 0.09 + 0.09)).toBeCloseTo(1, 1.7);
  });

  it('is plain JSON, and the same after a trip through it', () => {
    fc.assert(
      fc.property(teams, (readings) => {
        const fit = fitDemand(readings);
        expect(JSON.parse(JSON.stringify(fit))).toEqual(fit);
        expect(fit.status).not.toBe('not-converged');
      }),
      FEW,
    );
  });

  it('does not depend on the order of the readings', () => {
    fc.assert(
      fc.property(teams, (readings) => {
        expect(fitDemand([...readings].reverse())).toEqual(fitDemand(readings));
      }),
      FEW,
    );
  });

  it('does not depend on what riders and tracks are called', () => {
    const renamed = (id: string): string => [...id].reverse().join('');
    fc.assert(
      fc.property(teams, (readings) => {
        const fit = fitDemand(readings);
        const other = fitDemand(
          readings.map((row) => ({ ...row, riderId: renamed(row.riderId), trackId: renamed(row.trackId) })),
        );
        const who = { riderId: 'rider 1', trackId: 'track 2' };
        const there = { riderId: renamed(who.riderId), trackId: renamed(who.trackId) };
        // Sums in another order, over stored numbers of 8 digits.
        expect(predictiveQuantile(predictDemand(other, there), 0.9)).toBeCloseTo(
          predictiveQuantile(predictDemand(fit, who), 0.9),
          5,
        );
      }),
      FEW,
    );
  });

  it('moves with the readings: the same shift of all heights and of mu shifts every prediction', () => {
    fc.assert(
      fc.property(teams, fc.double({ min: -1, max: 1, noNaN: true }), (readings, shift) => {
        const fit = fitDemand(readings);
        const shifted = fitDemand(
          readings.map((row) => ({ ...row, logHeight: row.logHeight + shift })),
          { ...DEFAULT_DEMAND_PRIORS, muMean: DEFAULT_DEMAND_PRIORS.muMean + shift },
        );
        const who = { riderId: 'rider 1', trackId: 'track 1' };
        const moved = predictiveQuantile(predictDemand(shifted, who), 0.95);
        // The search for the top and stored digits may differ in the last place kept.
        expect(moved - shift).toBeCloseTo(predictiveQuantile(predictDemand(fit, who), 0.95), 3);
      }),
      FEW,
    );
  });

  it('a lower bound never lowers the predicted upper quantile materially', () => {
    // 0.05 in the log is 5 % of a hit height: a bound far below narrows the scatter a little.
    fc.assert(
      fc.property(teams, reading, (readings, extra) => {
        const who = { riderId: extra.riderId, trackId: extra.trackId };
        const before = predictiveQuantile(predictDemand(fitDemand(readings), who), 0.95);
        const bound: DemandReading = { ...extra, kind: 'at-least' };
        const after = predictiveQuantile(predictDemand(fitDemand([...readings, bound]), who), 0.95);
        expect(after).toBeGreaterThan(before - 0.05);
      }),
      FEW,
    );
  });

  it('refuses readings that are not numbers, naming them', () => {
    const bad: DemandReading = {
      riderId: 'a',
      trackId: 'b',
      logHeight: Number.NaN,
      kind: 'exact',
      readingSd: 0.1,
    };
    expect(() => fitDemand([bad])).toThrowError(/readings\[0\].logHeight is NaN/);
    expect(() => fitDemand([{ ...bad, logHeight: 0, readingSd: -1 }])).toThrowError(EvidenceInputError);
    expect(() => fitDemand([], { ...DEFAULT_DEMAND_PRIORS, muSd: 0 })).toThrowError(/priors.muSd/);
  });
});

describe('partial pooling', () => {
  const rows = (riderId: string, trackId: string, heights: readonly number[]): DemandReading[] =>
    heights.map((logHeight) => ({ riderId, trackId, logHeight, kind: 'exact', readingSd: 0.05 }));

  it('pulls one reading far towards the rest and many readings hardly at all', () => {
    const rest = [...rows('a', 'known', [-1.1, -0.3, -0.9, -0.5]), ...rows('b', 'known', [-0.3, -1.1, -0.7])];
    const once = fitDemand([...rest, ...rows('a', 'new', [0.3])]);
    const often = fitDemand([
      ...rest,
      ...rows(
        'a',
        'new',
        Array.from({ length: 20 }, () => 0.3),
      ),
    ]);
    const mean = (fit: ReturnType<typeof fitDemand>): number =>
      summaryOfMixture(predictDemand(fit, { riderId: 'a', trackId: 'new' })).mean;
    // The rest lies at −0.7 and the reading at 0.3: one run says some half of the way, twenty nearly all of it.
    expect(mean(once)).toBeGreaterThan(-0.5);
    expect(mean(once)).toBeLessThan(0.1);
    expect(mean(often)).toBeGreaterThan(0.2);
  });

  it('an unknown rider or track widens the prediction', () => {
    fc.assert(
      fc.property(teams, (readings) => {
        const fit = fitDemand([...readings, ...rows('rider 1', 'track 1', [-0.7, -0.6, -0.8, -0.7])]);
        const sd = (who: Parameters<typeof predictDemand>[1]): number =>
          summaryOfMixture(predictDemand(fit, who)).sd;
        expect(sd({ trackId: 'track 1' })).toBeGreaterThan(
          sd({ riderId: 'rider 1', trackId: 'track 1' }) - 0.02,
        );
        expect(sd({})).toBeGreaterThan(sd({ trackId: 'track 1' }));
      }),
      FEW,
    );
  });
});

describe('a predictive distribution', () => {
  const distribution = predictDemand(fitDemand([]), {});

  it('quantile and exceedance are each other’s inverse', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }), (p) => {
        const above = exceedance(distribution, predictiveQuantile(distribution, p));
        // Bisection to 1e-10 of an sd, seen through a density of at most 1.
        expect(Math.abs(above - (1 - p))).toBeLessThan(1e-9);
      }),
    );
  });

  it('keeps its upper tail where 1 minus a distribution function would be 0', () => {
    const narrow = { weights: [1], means: [0], sds: [1] };
    // P(Z > 20) = 2.7536e-89 (mpmath, 40 digits).
    expect(exceedance(narrow, 20) / 2.7536241186062337e-89).toBeCloseTo(1, 12);
    expect(exceedance(narrow, Number.POSITIVE_INFINITY)).toBe(0);
    expect(exceedance(narrow, Number.NEGATIVE_INFINITY)).toBe(1);
  });

  it('refuses a fit of another model version', () => {
    expect(() => predictDemand({ ...fitDemand([]), modelVersion: 'other' }, {})).toThrowError(/modelVersion/);
  });
});
