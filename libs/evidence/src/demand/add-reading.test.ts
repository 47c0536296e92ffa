import { describe, expect, it } from 'vitest';
import { addReading } from './add-reading.js';
import { fitDemand, type DemandFit } from './fit.js';
import { summaryOfMixture } from './mixture.js';
import { predictDemand } from './predict.js';
import type { DemandReading, ReadingKind } from './reading.js';

/** Scatter without randomness: the fractional parts of multiples of the golden ratio, mapped to about ± 0.35. */
const scatter = (i: number): number => 0.7 * (((i * 0.6180339887) % 1) - 0.5);

const reading = (i: number, more: Partial<DemandReading> = {}): DemandReading => ({
  riderId: `rider ${i % 3}`,
  trackId: `track ${i % 4}`,
  logHeight: -0.8 + 0.1 * (i % 4) + 0.05 * (i % 3) + scatter(i),
  kind: 'exact',
  readingSd: 0.05,
  ...more,
});
const readings = Array.from({ length: 120 }, (_, i) => reading(i));
const fit = fitDemand(readings);

const predicted = (from: DemandFit, who: { riderId?: string; trackId?: string }) =>
  summaryOfMixture(predictDemand(from, who));

describe('one reading more', () => {
  it.each<[string, Partial<DemandReading>]>([
    ['an exact one', { logHeight: 0.2 }],
    ['a lower bound', { logHeight: -0.2, kind: 'at-least' as ReadingKind }],
    ['an upper bound', { logHeight: -1.2, kind: 'at-most' as ReadingKind }],
    ['one of a new rider', { riderId: 'someone new', logHeight: -0.1 }],
    ['one of a new track', { trackId: 'somewhere new', logHeight: 0.1 }],
  ])('%s: predicts what a full fit predicts', (_, more) => {
    const extra = reading(1, more);
    const added = addReading(fit, extra);
    expect(added.status).toBe('updated');
    const full = fitDemand([...readings, extra]);
    for (const who of [extra, { riderId: 'rider 2', trackId: 'track 3' }, { trackId: extra.trackId }, {}]) {
      const { riderId, trackId } = who as Partial<DemandReading>;
      const asked = {
        ...(riderId === undefined ? {} : { riderId }),
        ...(trackId === undefined ? {} : { trackId }),
      };
      const [got, expected] = [predicted(added.fit, asked), predicted(full, asked)];
      // The lattice of the sds stays where it was and a bound is matched once: a hundredth of a log metre.
      expect(Math.abs(got.mean - expected.mean)).toBeLessThan(0.01);
      expect(Math.abs(got.q95 - expected.q95)).toBeLessThan(0.02);
    }
    expect(added.fit.counts.readings).toBe(121);
    expect(added.fit.tracks.find(({ id }) => id === extra.trackId)?.readings).toBe(
      full.tracks.find(({ id }) => id === extra.trackId)?.readings,
    );
  });

  it('asks for a refit after a tenth of the readings', () => {
    let current = fit;
    let taken = 0;
    for (let i = 0; i < 40; i += 1) {
      const added = addReading(current, reading(i));
      if (added.status === 'refit needed') break;
      current = added.fit;
      taken += 1;
    }
    expect(taken).toBe(12);
  });

  it('asks for a refit where a track rests on bounds', () => {
    const bound = reading(1, { trackId: 'somewhere new', kind: 'at-least' });
    const added = addReading(fit, bound);
    expect(added).toMatchObject({ status: 'refit needed', fit });
    expect(added.message).toMatch(/rests on bounds/);
  });

  it('costs less than the 20 ms that a pit can wait, for 20 riders and 30 tracks', () => {
    const large = Array.from({ length: 3000 }, (_, i) => ({
      ...reading(i),
      riderId: `rider ${i % 20}`,
      trackId: `track ${Math.floor(i / 20) % 30}`,
    }));
    const stored = fitDemand(large);
    const best = Math.min(
      ...Array.from({ length: 12 }, () => {
        // CPU time: what else the machine does meanwhile does not count.
        const start = process.cpuUsage();
        addReading(stored, large[7] as DemandReading);
        const { user, system } = process.cpuUsage(start);
        return (user + system) / 1e3;
      }),
    );
    expect(best).toBeLessThan(20);
  });
});
