import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SeededRandom } from './random.js';

const COUNT = 20_000;
const draw = (seed: number, next: (random: SeededRandom) => number) => {
  const random = new SeededRandom(seed);
  return Array.from({ length: COUNT }, () => next(random));
};
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('SeededRandom', () => {
  it('repeats itself for a seed', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const [a, b] = [new SeededRandom(seed), new SeededRandom(seed)];
        for (let i = 0; i < 20; i += 1) expect(a.uniform()).toBe(b.uniform());
      }),
    );
  });

  it('draws uniformly from 0 up to, but not, 1', () => {
    const values = draw(1, (random) => random.uniform());
    expect(values.every((value) => value >= 0 && value < 1)).toBe(true);
    // Standard error of the mean 0.29/√20,000 = 0.002; five of them.
    expect(Math.abs(mean(values) - 0.5)).toBeLessThan(0.01);
  });

  it('draws normal values with the standard deviation asked for', () => {
    const values = draw(2, (random) => random.normal(3));
    // Standard errors: 0.021 of the mean, 0.015 of the standard deviation; five of them.
    expect(Math.abs(mean(values))).toBeLessThan(0.11);
    expect(Math.abs(Math.sqrt(mean(values.map((value) => value ** 2))) - 3)).toBeLessThan(0.08);
  });

  it('picks every choice, and is true as often as asked', () => {
    expect(new Set(draw(3, (random) => random.pick([1, 2, 3])))).toEqual(new Set([1, 2, 3]));
    const share = mean(draw(4, (random) => Number(random.chance(0.07))));
    // Standard error 0.0018; five of them.
    expect(Math.abs(share - 0.07)).toBeLessThan(0.009);
  });
});
