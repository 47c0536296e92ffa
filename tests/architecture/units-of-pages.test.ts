import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const ROOT = new URL('../../apps/dashboard/src/', import.meta.url).pathname;
/** Where the units are. */
const HOME = 'shared/format/';
/** A unit that a person may choose, standing after something that is put into a text: `${pressure} psi`, `} kg`. */
const FIXED_UNIT = /\}\s*(psi|kg|°C)(?![\w/])/;

it('no page puts a unit beside a figure that the reader may want in another', () => {
  const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' }).filter(
    (file) => /\.tsx?$/.test(file) && !file.startsWith(HOME) && !file.includes('.test.'),
  );
  expect(files.length).toBeGreaterThan(100);
  const fixed = files.flatMap((file) =>
    readFileSync(`${ROOT}${file}`, 'utf8')
      .split('\n')
      .flatMap((line, i) => (FIXED_UNIT.test(line) ? [`${file}:${i + 1}: ${line.trim()}`] : [])),
  );
  expect(fixed, 'use pressureText, massText or temperatureText of shared/format').toEqual([]);
});
