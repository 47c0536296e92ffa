import { expect, it } from 'vitest';
import { fits } from './fit.js';

it.each([
  [1.9, true],
  [-1.9, true],
  [2.1, false],
  [-2.1, false],
])('a set-up %f standard uncertainties off fits: %s', (residual, expected) => {
  expect(fits({ residual })).toBe(expected);
});
