import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const ROOT = new URL('../../apps/dashboard/src/', import.meta.url).pathname;
/** Where the units are. */
const HOME = 'shared/format/';
/** A unit that a person may choose, standing after something that is put into a text: `${pressure} psi`, `} kg`. */
const FIXED_UNIT = /\}\s*(psi|kg|°C)(?![\w/])/;
/** A unit after a space at which a line may break: `${travel} mm`, `{sag} %`, '95 % hit'. */
const PARTED_UNIT = /(\}|\d) (%|psi|bar|mm|mL|kg|lb|°C|°F|hPa|N|m|s)(?![\w/·²³])/;
const COMMENT = /^\s*(\/\/|\/\*|\*)/;
/** A sentence that goes through what keeps its figures whole; all of `measure-texts` goes through `inChosenUnits`. */
const KEPT_WHOLE = /wholeFigures\(/;
const SAID_IN_CHOSEN_UNITS = ['features/workshop/measure-texts.ts'];

const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' }).filter(
  (file) => /\.tsx?$/.test(file) && !file.startsWith(HOME) && !file.includes('.test.'),
);
const linesOf = (file: string) => readFileSync(`${ROOT}${file}`, 'utf8').split('\n');

it('no page puts a unit beside a figure that the reader may want in another', () => {
  expect(files.length).toBeGreaterThan(100);
  const fixed = files.flatMap((file) =>
    linesOf(file).flatMap((line, i) => (FIXED_UNIT.test(line) ? [`${file}:${i + 1}: ${line.trim()}`] : [])),
  );
  expect(fixed, 'use pressureText, massText or temperatureText of shared/format').toEqual([]);
});

it('no page lets a line end between a figure and its unit', () => {
  const parted = files
    .filter((file) => !file.includes('/generated/') && !/test-(bike|unit)\.ts$/.test(file))
    .filter((file) => !SAID_IN_CHOSEN_UNITS.includes(file))
    .flatMap((file) =>
      linesOf(file).flatMap((line, i, lines) =>
        PARTED_UNIT.test(line) && !COMMENT.test(line) && !KEPT_WHOLE.test(`${lines[i - 1] ?? ''}${line}`)
          ? [`${file}:${i + 1}: ${line.trim()}`]
          : [],
      ),
    );
  expect(parted, 'use withUnit or wholeFigures of shared/format/with-unit').toEqual([]);
});
