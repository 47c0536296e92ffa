import {
  airSpring,
  bottomingHeight,
  sag,
  springForce,
  travelForHeight,
  type Scene,
} from '@loamledger/spring';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BikeEnd } from '../api/bike-ends.js';
import { answersFor, type Question } from './answers.js';
import type { Fill } from './fill.js';
import { mountOf, sceneOf } from './mount.js';
import { testBraking, testFork, testShock } from './test-bike.js';

const ends = [
  ['fork', testFork],
  ['shock', testShock],
] as const;

const questionOf = (end: BikeEnd): Question => ({ ...end, braking: testBraking });
const sceneFor = (end: BikeEnd, fill: Fill): Scene => sceneOf(mountOf(end), fill);

/** What the API takes from any unit, within the spacers of the test's units. */
const anyFill = fc.record({
  pressurePsi: fc.double({ min: 5, max: 600, noNaN: true }),
  spacers: fc.integer({ min: 0, max: 4 }),
});

describe.each(ends)('the answers about a %s', (_, end) => {
  const question = questionOf(end);
  const answers = (fill: Fill) => answersFor(sceneFor(end, fill), question);

  it('are those of the engine', () => {
    const fill = { pressurePsi: end.fill?.pressurePsi ?? 0, spacers: 1 };
    const scene = sceneFor(end, fill);
    const spring = airSpring(scene.unit, scene.fill);
    const { figures } = answers(fill);
    const stroke = spring.stroke;
    expect(figures.sagPct).toBe(sag(spring, scene.end).fraction * 100);
    expect(figures.medianHitMm).toBe(travelForHeight(spring, scene.end, 0.4).travel * 1e3);
    expect(figures.highHitMm).toBe(travelForHeight(spring, scene.end, 0.8).travel * 1e3);
    expect(bottomingHeight(spring, scene.end)).toMatchObject({ height: figures.fullestHitM });
    expect(figures.progression).toBe(springForce(spring, 0.95 * stroke) / springForce(spring, 0.5 * stroke));
  });

  it('are never NaN, whatever pressure and spacers the API would take', () => {
    fc.assert(
      fc.property(anyFill, (fill) => {
        for (const value of Object.values(answers(fill).figures)) expect(value).not.toBeNaN();
      }),
      { numRuns: 60 },
    );
  });

  it('tell less sag and no more risk with more pressure', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 250, noNaN: true }),
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.integer({ min: 0, max: 4 }),
        (pressurePsi, more, spacers) => {
          const soft = answers({ pressurePsi, spacers }).figures;
          const hard = answers({ pressurePsi: pressurePsi + more, spacers }).figures;
          const isStanding = (soft.sagMm ?? 0) > 0 && (soft.sagPct ?? 0) < 100;
          if (isStanding) expect(hard.sagMm).toBeLessThan(soft.sagMm ?? Number.NaN);
          expect(hard.riskPct).toBeLessThanOrEqual(soft.riskPct ?? Number.NaN);
          expect(hard.highHitMm).toBeLessThanOrEqual(soft.highHitMm ?? Number.NaN);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('say nothing of a track where none is chosen', () => {
    const scene = sceneFor(end, { pressurePsi: 100, spacers: 1 });
    const { figures } = answersFor(scene, { ...question, forecast: null, riskCurve: [] });
    expect(figures).toMatchObject({ medianHitMm: null, highHitMm: null, reserveMm: null, riskPct: null });
    expect(figures.sagPct).toBeGreaterThan(0);
  });
});

describe('remarks', () => {
  const remarks = (end: BikeEnd, fill: Fill, question = questionOf(end)) =>
    answersFor(sceneFor(end, fill), question).remarks;

  it('say that a hit bottoms, rather than only that no travel is left', () => {
    expect(remarks(testFork, { pressurePsi: 30, spacers: 0 })).toContain('median hit bottoms');
    expect(remarks(testFork, { pressurePsi: 71, spacers: 2 })).toContain('high hit bottoms');
  });

  it('say that the rear wheel lifts before the reference braking', () => {
    const braking = { ...testBraking, centreOfMassHeightMm: 1550 };
    const question = { ...questionOf(testFork), braking };
    expect(remarks(testFork, { pressurePsi: 71, spacers: 2 }, question)).toContain('rear wheel lifts');
  });
});
