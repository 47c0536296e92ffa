import { describe, expect, it } from 'vitest';
import { addReading } from './add-reading.js';
import { fitDemand, type DemandFit } from './fit.js';
import { expectedHighHitInterval, highHitInterval, type HitInterval } from './next-runs.js';
import { predictDemand, predictiveQuantile } from './predict.js';
import type { DemandReading } from './reading.js';

const READING_SD = 0.06;

const reading = (riderId: string, trackId: string, logHeight: number): DemandReading => ({
  riderId,
  trackId,
  logHeight,
  kind: 'exact',
  readingSd: READING_SD,
});

/** Forty readings: rider a on two tracks, rider b on three; nobody has ridden track 4. */
const readings = Array.from({ length: 40 }, (_, i) => {
  const isA = i % 5 < 2;
  const scatter = 0.2 * Math.sin(7 * i);
  return reading(isA ? 'a' : 'b', `track ${(i % (isA ? 2 : 3)) + 1}`, -0.6 + scatter + (isA ? 0.1 : 0));
});
const fit: DemandFit = fitDemand(readings);
const width = ({ low, high }: HitInterval): number => high - low;
const runs = (riderId: string, trackId: string, count = 2) => ({
  run: { riderId, trackId },
  count,
  readingSd: READING_SD,
});

describe('the interval of the 95th-percentile hit', () => {
  const who = { riderId: 'a', trackId: 'track 3' };

  it('lies above the median hit, and around the 95th percentile that is forecast', () => {
    const { low, high } = highHitInterval(fit, who);
    const forecast = predictDemand(fit, who);
    expect(low).toBeGreaterThan(predictiveQuantile(forecast, 0.25));
    expect(low).toBeLessThan(predictiveQuantile(forecast, 0.95));
    expect(high).toBeGreaterThan(predictiveQuantile(forecast, 0.95));
  });

  it('narrows with every run, most with runs of this rider here, and less with runs elsewhere', () => {
    const now = width(highHitInterval(fit, who));
    const after = (next: ReturnType<typeof runs>) => width(expectedHighHitInterval(fit, who, next));
    const here = after(runs('a', 'track 3'));
    expect(here).toBeLessThan(now);
    expect(after(runs('a', 'track 3', 6))).toBeLessThan(here);
    expect(after(runs('b', 'track 3'))).toBeGreaterThan(here);
    expect(after(runs('a', 'track 1'))).toBeGreaterThan(here);
  });

  it('counts runs on a track that nobody has ridden for that track, and less for another new one', () => {
    const fresh = { riderId: 'a', trackId: 'track 4' };
    const there = width(expectedHighHitInterval(fit, fresh, runs('a', 'track 4')));
    const onAnother = width(expectedHighHitInterval(fit, fresh, runs('a', 'track 5')));
    expect(there).toBeLessThan(onAnother);
    // It still tells of the rider and of how far tracks differ.
    expect(onAnother).toBeLessThan(width(highHitInterval(fit, fresh)));
  });

  it('is the average of those that the fit gives when one reading comes as low or high as is to be expected', () => {
    const { weights, means, sds } = predictDemand(fit, who);
    const outcomes = { weights, means, sds: sds.map((sd) => Math.hypot(sd, READING_SD)) };
    const then = [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => {
      const added = addReading(fit, reading('a', 'track 3', predictiveQuantile(outcomes, share)));
      expect(added.status).toBe('updated');
      return highHitInterval(added.fit, who);
    });
    const told = expectedHighHitInterval(fit, who, runs('a', 'track 3', 1));
    // Both are Bayes' rule on the same parts; only the digits of the quantiles differ.
    expect(told.low).toBeCloseTo(
      then.reduce((sum, { low }) => sum + low / 5, 0),
      6,
    );
    expect(told.high).toBeCloseTo(
      then.reduce((sum, { high }) => sum + high / 5, 0),
      6,
    );
  });

  it('refuses runs that cannot be', () => {
    expect(() => expectedHighHitInterval(fit, who, runs('a', 'track 3', 0))).toThrowError(/next.count is 0/);
    expect(() => expectedHighHitInterval(fit, who, { ...runs('a', 'track 3'), readingSd: -1 })).toThrowError(
      /readingSd/,
    );
  });
});
