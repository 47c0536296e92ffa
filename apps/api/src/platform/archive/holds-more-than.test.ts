import { expect, it } from 'vitest';
import { holdsMoreThan } from './holds-more-than.js';

it.each([
  ['[]', 2],
  ['[1]', 2],
  ['[1, 2, 3]', 4],
  ['{"a": 1, "b": [2, 3]}', 5],
  ['[[], [], {}]', 7],
  [String.raw`["a, [ { \" , ", "\\", ","]`, 4],
])('counts the values of %s', (json, values) => {
  expect(holdsMoreThan(values, json)).toBe(false);
  expect(holdsMoreThan(values - 1, json)).toBe(true);
});
