import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tUpperQuantile } from '../numerics/distributions.js';
import { levelAtLook, looksLevels } from './look-levels.js';

const bounds = (levels: readonly number[]) =>
  levels.map((level) => tUpperQuantile(level / 2, Number.POSITIVE_INFINITY));

describe('levels of looks whose number is known', () => {
  it('are the published bounds for five looks at 5 %', () => {
    // Table of the spending function of O'Brien and Fleming's shape, both sides, α = 0.05: reboussin2000.
    const published = [4.8769, 3.3569, 2.6803, 2.2898, 2.031];
    for (const [i, bound] of bounds(looksLevels(0.05, 5)).entries()) {
      expect(Math.abs(bound - (published[i] as number))).toBeLessThan(2e-4);
    }
  });

  it('are the whole error rate for a single look', () => {
    expect(looksLevels(0.05, 1)[0]).toBeCloseTo(0.05, 10);
  });

  it('rise from look to look, stay below α, and add up to at least α', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 20 }),
        fc.double({ min: 1e-4, max: 0.2, noNaN: true }),
        (looks, alpha) => {
          const levels = looksLevels(alpha, looks);
          expect(levels).toHaveLength(looks);
          expect(levels.every((level, i) => level >= (levels[i - 1] ?? 0))).toBe(true);
          expect(levels.at(-1)).toBeLessThan(alpha);
          expect(levels.reduce((sum, level) => sum + level, 0)).toBeGreaterThan(alpha);
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe('the level of several tests', () => {
  it('is never above the share that a step of Holm may take over all looks', () => {
    for (const of of [2, 5, 10]) {
      for (const tests of [1, 2, 3, 7, 20]) {
        for (let number = 1; number <= of; number += 1) {
          const level = levelAtLook(0.05, { number, of }, tests);
          for (let share = 1; share <= tests; share += 1) {
            const allowed = looksLevels(0.05 / share, of)[number - 1] as number;
            expect(level / share).toBeLessThanOrEqual(allowed * (1 + 1e-9));
          }
        }
      }
    }
  });
});

describe('the level where nobody knows how many looks will come', () => {
  it('adds up to less than α', () => {
    let sum = 0;
    for (let number = 1; number <= 1000; number += 1) sum += levelAtLook(0.05, { number, of: null }, 3);
    expect(sum).toBeLessThan(0.05);
    expect(sum).toBeGreaterThan(0.0499);
  });
});

it.each([
  { number: 0, of: null },
  { number: 1.5, of: 4 },
  { number: 5, of: 4 },
  { number: 1, of: 0 },
  { number: 1, of: 41 },
])('a look that cannot be is refused: $number of $of', (look) => {
  expect(() => levelAtLook(0.05, look, 1)).toThrowError(/look/);
});
