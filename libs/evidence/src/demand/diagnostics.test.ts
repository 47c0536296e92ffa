import { describe, expect, it } from 'vitest';
import { diagnoseDemand, SURPRISING } from './diagnostics.js';
import { fitDemand } from './fit.js';
import { summaryOfMixture } from './mixture.js';
import { predictDemand } from './predict.js';
import type { DemandReading } from './reading.js';

const HEIGHTS = [-0.9, -0.7, -0.8, -0.75, -0.85, -0.6, -0.95, -0.72];
const readings: DemandReading[] = ['a', 'b', 'c'].flatMap((trackId, t) =>
  HEIGHTS.map((height, i): DemandReading => ({
    riderId: i % 2 === 0 ? 'one' : 'two',
    trackId,
    logHeight: height + 0.2 * t,
    kind: 'exact',
    readingSd: 0.05,
  })),
);

describe('the diagnosis of a fit', () => {
  it('puts a slipped decimal first and calls it surprising', () => {
    const slipped = readings.map((reading, i) => (i === 5 ? { ...reading, logHeight: 1.6 } : reading));
    const [first, second] = diagnoseDemand(slipped, fitDemand(slipped));
    expect(first?.index).toBe(5);
    expect(first?.chance).toBeLessThan(SURPRISING);
    expect(first?.pull).toBeGreaterThan(0.05);
    expect(second?.chance).toBeGreaterThan(SURPRISING);
  });

  it('finds the pull that a refit without the reading finds', () => {
    const all = diagnoseDemand(readings, fitDemand(readings));
    for (const index of [0, 11, 22]) {
      const reading = readings[index] as DemandReading;
      const level = (rows: readonly DemandReading[]): number =>
        summaryOfMixture(predictDemand(fitDemand(rows), reading)).mean;
      const refit = level(readings) - level(readings.filter((_, i) => i !== index));
      // The mixture is merged and its lattice does not move: a hundredth of a log metre.
      expect(Math.abs((all.find((entry) => entry.index === index)?.pull ?? 9) - refit)).toBeLessThan(0.01);
    }
  });

  it('says how likely a bound was', () => {
    const bound = (logHeight: number, kind: DemandReading['kind']): DemandReading => ({
      riderId: 'one',
      trackId: 'a',
      logHeight,
      kind,
      readingSd: 0.05,
    });
    const rows = [...readings, bound(0.2, 'at-least'), bound(-2, 'at-most'), bound(-1.5, 'at-least')];
    const found = new Map(diagnoseDemand(rows, fitDemand(rows)).map((entry) => [entry.index, entry]));
    expect(found.get(readings.length)?.chance).toBeLessThan(0.2);
    expect(found.get(readings.length + 1)?.chance).toBeLessThan(0.2);
    expect(found.get(readings.length + 2)?.chance).toBeGreaterThan(0.9);
    expect(found.get(readings.length)?.pull).toBeNull();
  });
});
