import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRoot } from './root.js';

const points = (f: (x: number) => number, a: number, b: number) =>
  [
    { x: a, y: f(a) },
    { x: b, y: f(b) },
  ] as const;

describe('findRoot', () => {
  it('finds the root of any cubic that rises through it, within the tolerance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.99, max: 0.99, noNaN: true }),
        fc.double({ min: 0.001, max: 1000, noNaN: true }),
        (root, bend) => {
          const f = (x: number) => x - root + bend * (x - root) ** 3;
          const result = findRoot(f, ...points(f, -1, 1), 1e-10);
          expect(result.status).toBe('found');
          expect(Math.abs(result.x - root)).toBeLessThanOrEqual(1e-10);
        },
      ),
    );
  });

  it('needs no more than a third more evaluations than bisection on a step', () => {
    const f = (x: number) => (x < 0.123 ? -1 : 1);
    const result = findRoot(f, ...points(f, -1, 1), 1e-9);
    expect(result.status).toBe('found');
    // Bisection: log2(2 / 1e-9) = 31.
    expect(result.evaluations).toBeLessThan(42);
  });

  it('says when the ends do not bracket a root, and when the function is not a number', () => {
    const square = (x: number) => x * x + 1;
    expect(findRoot(square, ...points(square, -1, 1), 1e-9).status).toBe('not-bracketed');
    const broken = (x: number) => (Math.abs(x) < 0.9 ? NaN : x);
    expect(findRoot(broken, ...points(broken, -1, 1), 1e-9).status).toBe('not-converged');
  });
});
