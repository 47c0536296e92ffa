import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addReading } from './add-reading.js';
import { fitDemand } from './fit.js';
import { summaryOfMixture } from './mixture.js';
import { predictDemand } from './predict.js';
import { CONDITION_SD, DEFAULT_DEMAND_PRIORS, type DemandReading } from './reading.js';
import type { RunOf } from './run-unknowns.js';

const reading = (riderId: string, trackId: string, logHeight: number, condition?: string): DemandReading => ({
  riderId,
  trackId,
  logHeight,
  kind: 'exact',
  readingSd: 0,
  ...(condition === undefined ? {} : { condition }),
});

/** All sds known: the posterior is one normal distribution, and sums can be done by hand. */
const SDS = { track: 0.4, rider: 0.2, riderOnTrack: 0.3, run: 0.25 };
const NARROW_MU = { ...DEFAULT_DEMAND_PRIORS, muMean: 0, muSd: 1e-6 };
const only = (riderOnTrack: number, run: number) => ({
  fixedSds: { track: 0, rider: 0, riderOnTrack, run },
});
const predicted = (fit: ReturnType<typeof fitDemand>, run: RunOf) =>
  summaryOfMixture(predictDemand(fit, run));

describe('the effect of a rider on one track', () => {
  it('is shrunk as a normal prior says where they met, and a fresh draw where they did not', () => {
    const rows = [0.5, 0.3, 0.4].map((height) => reading('one', 'a', height));
    const fit = fitDemand(rows, NARROW_MU, only(0.3, 0.2));
    const precision = 3 / 0.2 ** 2;
    const prior = 1 / 0.3 ** 2;
    const met = predicted(fit, { riderId: 'one', trackId: 'a' });
    // Closed form; stored numbers have eight digits.
    expect(met.mean).toBeCloseTo((0.4 * precision) / (precision + prior), 6);
    expect(met.sd ** 2).toBeCloseTo(1 / (precision + prior) + 0.2 ** 2, 6);
    const apart = predicted(fit, { riderId: 'one', trackId: 'b' });
    expect(apart.mean).toBeCloseTo(0, 6);
    expect(apart.sd ** 2).toBeCloseTo(0.3 ** 2 + 0.2 ** 2, 6);
  });

  it('is shared between grounds', () => {
    const rows = [
      ...[0.5, 0.3].map((height) => reading('one', 'a', height)),
      ...[-0.1, 0.1, 0].map((height) => reading('one', 'a', height, 'wet')),
    ];
    const fit = fitDemand(rows, NARROW_MU, only(0.3, 0.2));
    // Unknowns effect i and ground w: precision matrix [[p, q], [q, q + 1/0.15²]], right side [Σ dry + Σ wet, Σ wet].
    const [dry, wet] = [2 / 0.2 ** 2, 3 / 0.2 ** 2];
    const [a, b, d] = [dry + wet + 1 / 0.3 ** 2, wet, wet + 1 / CONDITION_SD ** 2];
    const [right, rightWet] = [dry * 0.4 + wet * 0, wet * 0];
    const determinant = a * d - b * b;
    const effect = (d * right - b * rightWet) / determinant;
    const ground = (a * rightWet - b * right) / determinant;
    expect(predicted(fit, { riderId: 'one', trackId: 'a' }).mean).toBeCloseTo(effect, 6);
    const onWet = predicted(fit, { riderId: 'one', trackId: 'a', condition: 'wet' });
    expect(onWet.mean).toBeCloseTo(effect + ground, 6);
    expect(onWet.sd ** 2).toBeCloseTo((a + d - 2 * b) / determinant + 0.2 ** 2, 6);
  });

  it('fixed at 0 is a model without it', () => {
    const rows = [reading('one', 'a', 0.5), reading('two', 'a', -0.5), reading('one', 'b', 0)];
    const fit = fitDemand(rows, DEFAULT_DEMAND_PRIORS, { fixedSds: { ...SDS, riderOnTrack: 0 } });
    for (const { effects, variances } of fit.components) {
      expect(variances.riderOnTrack).toBe(0);
      for (const { offset, variance, pulls } of effects)
        expect([offset, variance, ...pulls]).toEqual([0, 0, 0]);
    }
  });

  it('takes one reading more as a full fit does, exactly where all sds are known', () => {
    const id = (prefix: string, count: number) =>
      fc.integer({ min: 1, max: count }).map((n) => `${prefix}${n}`);
    const height = fc.double({ min: -1.5, max: 0.5, noNaN: true });
    const row = fc
      .tuple(id('rider ', 3), id('track ', 3), height, fc.constantFrom(undefined, 'wet', 'muddy'))
      .map(([riderId, trackId, logHeight, condition]) => reading(riderId, trackId, logHeight, condition));
    fc.assert(
      fc.property(fc.array(row, { minLength: 10, maxLength: 15 }), row, row, (rows, extra, asked) => {
        const options = { fixedSds: SDS };
        const added = addReading(fitDemand(rows, DEFAULT_DEMAND_PRIORS, options), extra);
        const full = fitDemand([...rows, extra], DEFAULT_DEMAND_PRIORS, options);
        expect(added.status).toBe('updated');
        for (const run of [extra, asked, { ...asked, condition: 'wet' }]) {
          const [got, expected] = [predicted(added.fit, run), predicted(full, run)];
          // Stored numbers have eight digits, of which an update loses some.
          expect(got.mean).toBeCloseTo(expected.mean, 5);
          expect(got.sd).toBeCloseTo(expected.sd, 5);
        }
      }),
    );
  });
});

describe('its standard deviation', () => {
  const team = (riders: number, runs: number): DemandReading[] =>
    Array.from({ length: riders }, (_, r) =>
      ['a', 'b', 'c'].flatMap((track, t) =>
        Array.from({ length: runs }, (__, i) => ({
          ...reading(
            `rider ${r}`,
            track,
            -0.7 + 0.3 * Math.sin(7 * r + 3 * t) + 0.1 * Math.cos(5 * i + r + t),
          ),
          readingSd: 0.05,
        })),
      ),
    ).flat();

  it('is told by runs from five riders with three values on each of three tracks on', () => {
    const fit = fitDemand(team(5, 3));
    expect(fit.riderOnTrackSd).toBe('told by runs');
    // The invented effects have an sd of 0.3/√2, the runs 0.1/√2.
    expect(fit.sds.riderOnTrack.mean).toBeGreaterThan(0.12);
    expect(fit.sds.riderOnTrack.mean).toBeLessThan(0.3);
  });

  it('is the prior as long as nothing is known', () => {
    const { riderOnTrack } = fitDemand([]).sds;
    // Mean of a half-normal distribution, √(2/π) of its scale; 1 % for the lattice.
    const expected = DEFAULT_DEMAND_PRIORS.riderOnTrackSdScale * Math.sqrt(2 / Math.PI);
    expect(Math.abs(riderOnTrack.mean / expected - 1)).toBeLessThan(0.01);
  });

  it.each([
    ['four riders', team(4, 3)],
    ['two values a pair', team(5, 2)],
  ])('rests mostly on the prior with %s, and is said to', (_, rows) => {
    const fit = fitDemand(rows);
    expect(fit.riderOnTrackSd).toBe('mostly prior');
  });
});
