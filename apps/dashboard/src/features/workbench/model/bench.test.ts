import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BikeEnd } from '../api/bike-ends.js';
import { FIGURES } from './answers.js';
import { openBench, propose, type Bench } from './bench.js';
import { AS_NOW } from './proposal.js';
import { testBraking, testFork, testShock } from './test-bike.js';

function benchOf(end: BikeEnd): Bench {
  const bench = openBench(end, testBraking);
  if (bench.status !== 'ready') throw new Error(bench.status);
  return bench;
}

describe('a bench', () => {
  it.each([testFork, testShock])('shows no change at all while nothing is proposed ($unitName)', (end) => {
    const bench = benchOf(end);
    const { view } = propose(bench, AS_NOW);
    for (const figure of FIGURES) {
      expect(view?.answers.figures[figure]).toBe(bench.now.answers.figures[figure]);
    }
  });

  it.each([
    ['a chamber without room', { unit: { ...testFork.unit, positiveVolumeMl: 20 } }],
    ['NaN', { sprungMassKg: Number.NaN }],
    ['no mass', { sprungMassKg: 0 }],
    ['a transfer position outside the stroke', { unit: { ...testFork.unit, transferPositionMm: 170 } }],
    ['an infinite volume', { unit: { ...testFork.unit, negativeVolumeMl: Infinity } }],
  ])('says what is impossible instead of breaking: %s', (_, wrong) => {
    const bench = openBench({ ...testFork, ...wrong }, testBraking);
    expect(bench.status).toBe('impossible');
    if (bench.status === 'impossible') expect(bench.refusal.argument).not.toBe('');
  });

  it('says it of a leverage table that turns back', () => {
    const rows = testShock.leverageTable;
    const bench = openBench({ ...testShock, leverageTable: [...rows].reverse() }, testBraking);
    expect(bench.status).toBe('impossible');
  });

  it('is not set up where nobody has said what is in the unit', () => {
    expect(openBench({ ...testFork, fill: null }, testBraking).status).toBe('not set up');
  });

  it('refuses at the field the spacers that leave no air, where no limit does', () => {
    const limits = { minPressurePsi: null, maxPressurePsi: null, maxSpacers: null };
    const { view, problems } = propose(benchOf({ ...testFork, limits }), {
      pressurePsi: null,
      spacers: '12',
    });
    expect(view).toBeNull();
    expect(problems).toEqual({ spacers: 'chamber full' });
  });

  it('answers anything typed with figures or a problem, and never with NaN', () => {
    const bench = benchOf({ ...testFork, limits: { ...testFork.limits, maxPressurePsi: null } });
    const text = fc.oneof(
      fc.string(),
      fc.double().map(String),
      fc.integer({ min: -5, max: 700 }).map(String),
      fc.constant(null),
    );
    fc.assert(
      fc.property(text, text, (pressurePsi, spacers) => {
        const { view, problems } = propose(bench, { pressurePsi, spacers });
        expect(view === null).toBe(Object.keys(problems).length > 0);
        for (const value of Object.values(view?.answers.figures ?? {})) expect(value).not.toBeNaN();
        for (const point of view?.curve ?? []) expect(Number.isFinite(point.forceN)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });
});
