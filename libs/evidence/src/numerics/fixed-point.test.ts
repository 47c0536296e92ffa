import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FixedPoint } from './fixed-point.js';

/** Steps until x → g(x) moves by less than 1e-10, mixed or plain. */
function stepsOf(g: (x: Float64Array) => Float64Array, start: Float64Array, mixed: boolean): number {
  const iteration = new FixedPoint(start.length);
  const weights = start.map(() => 1);
  let x = start;
  for (let step = 1; step <= 500; step += 1) {
    const image = g(x);
    const change = Math.max(...image.map((value, i) => Math.abs(value - (x[i] as number))));
    if (change < 1e-10) return step;
    if (mixed) iteration.mix(x, image, weights);
    x = image;
  }
  return Number.POSITIVE_INFINITY;
}

describe('a mixed fixed-point iteration', () => {
  const two = fc.record({
    a: fc.double({ min: -3, max: 0.95, noNaN: true }),
    b: fc.double({ min: -3, max: 0.95, noNaN: true }),
    x: fc.double({ min: -10, max: 10, noNaN: true }),
    y: fc.double({ min: -10, max: 10, noNaN: true }),
  });

  it('finds the fixed point of a linear map of two unknowns in a few steps, even where plain steps run away', () => {
    fc.assert(
      fc.property(two, ({ a, b, x, y }) => {
        const g = (at: Float64Array) =>
          Float64Array.of(x + a * (at[0] as number), y + b * (at[1] as number) + 0.1 * (at[0] as number));
        // Three residuals span the two unknowns; rounding may cost some steps more.
        expect(stepsOf(g, new Float64Array(2), true)).toBeLessThanOrEqual(10);
      }),
    );
  });

  it('needs a fraction of the steps of a slow map that bends', () => {
    const g = (at: Float64Array) => at.map((value, i) => Math.cos(value + i / 4));
    const start = new Float64Array(4);
    expect(stepsOf(g, start, true)).toBeLessThan(0.5 * stepsOf(g, start, false));
  });

  it('starts anew after a restart', () => {
    const iteration = new FixedPoint(1);
    const image = Float64Array.of(3);
    iteration.mix(Float64Array.of(0), image, Float64Array.of(1));
    iteration.restart();
    const other = Float64Array.of(7);
    iteration.mix(Float64Array.of(5), other, Float64Array.of(1));
    expect(other[0]).toBe(7);
  });
});
