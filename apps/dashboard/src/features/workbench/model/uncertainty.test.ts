import { airSpring, sag } from '@loamledger/spring';
import { describe, expect, it } from 'vitest';
import { answersFor, FIGURES } from './answers.js';
import { mountOf, sceneOf } from './mount.js';
import { testBraking, testFork, testShock } from './test-bike.js';
import { intervalsOf, intervalsOfChange, uncertainView } from './uncertainty.js';

/** Half width of a 90 % interval in standard uncertainties. */
const NORMAL_95 = 1.6448536269514722;

describe.each([
  ['fork', testFork, { pressurePsi: 76, spacers: 3 }],
  ['shock', testShock, { pressurePsi: 188, spacers: 2 }],
] as const)('the uncertainty of a %s', (_, end, proposal) => {
  const mount = mountOf(end);
  const question = { ...end, braking: testBraking };
  const viewOf = (fill: { pressurePsi: number; spacers: number }, sds = end.uncertainty) =>
    uncertainView(sceneOf(mount, fill), question, sds);
  const now = viewOf(end.fill ?? proposal);
  const proposed = viewOf(proposal);
  const { figures } = answersFor(sceneOf(mount, proposal), question);

  it('of no change is nothing: whatever is wrong is wrong alike', () => {
    const change = intervalsOfChange(now, now);
    for (const figure of FIGURES) {
      if (change[figure] !== null) expect(change[figure]).toEqual({ lower: 0, upper: 0 });
    }
  });

  it('holds every figure between its bounds, and travels within the stroke', () => {
    const intervals = intervalsOf(proposed);
    for (const figure of FIGURES) {
      const interval = intervals[figure];
      if (interval === null) continue;
      expect(interval.lower).toBeLessThanOrEqual(figures[figure] ?? Number.NaN);
      expect(interval.upper).toBeGreaterThanOrEqual(figures[figure] ?? Number.NaN);
    }
    for (const travel of [intervals.sagMm, intervals.medianHitMm, intervals.highHitMm]) {
      expect(travel?.upper ?? 0).toBeLessThanOrEqual(end.unit.strokeMm);
    }
  });

  it('is not told where the hit bottoms, since small errors change nothing there', () => {
    const fill = { pressurePsi: proposal.pressurePsi / 2, spacers: 0 };
    expect(answersFor(sceneOf(mount, fill), question).remarks).toEqual(
      expect.arrayContaining([expect.stringMatching(/hit bottoms$/)]),
    );
    expect(intervalsOf(viewOf(fill)).highHitMm).toBeNull();
  });

  it('is narrower for the change of sag than for the sag', () => {
    const width = (interval: { lower: number; upper: number } | null) =>
      interval === null ? Number.NaN : interval.upper - interval.lower;
    expect(width(intervalsOfChange(now, proposed).sagPct)).toBeLessThan(
      width(intervalsOf(proposed).sagPct) / 2,
    );
  });

  it('of the sag is what the gauge alone moves it by, where all else is certain', () => {
    const certain = Object.fromEntries(Object.keys(end.uncertainty).map((name) => [name, 0]));
    const sds = { ...(certain as typeof end.uncertainty), pressurePsi: 1 };
    const interval = intervalsOf(viewOf(proposal, sds)).sagPct;
    const sagAt = (pressurePsi: number) => {
      const { unit, fill, end: sprung } = sceneOf(mount, { ...proposal, pressurePsi });
      return 100 * sag(airSpring(unit, fill), sprung).fraction;
    };
    const slope = (sagAt(proposal.pressurePsi + 0.05) - sagAt(proposal.pressurePsi - 0.05)) / 0.1;
    const half = ((interval?.upper ?? 0) - (interval?.lower ?? 0)) / 2;
    // Central differences of about the same step on both sides: they differ by its square.
    expect(half).toBeCloseTo(Math.abs(slope) * NORMAL_95, 5);
  });
});
