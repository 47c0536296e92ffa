import { gaugePascal, type GaugePascal } from '@loamledger/units';
import { requireSprungEnd, type SprungEnd } from '../frame/sprung-end.js';
import { SpringInputError } from '../numerics/input-error.js';
import type { AirSpringUnit } from '../unit/air-spring-unit.js';
import { airSpring, type SpringFill } from '../unit/air-spring.js';
import { HeightSearch, type HeightResult } from './height-search.js';

/** What all cells of the grid have in common. */
export type GridFill = Omit<SpringFill, 'gaugePressure' | 'spacers'>;

export interface GridCell {
  readonly spacers: number;
  readonly gaugePressure: GaugePascal;
  readonly bottoming: HeightResult;
}

/** Local error of a step in a grid; keeps the heights within about 1e-5 of themselves. */
const GRID_TOLERANCE = 1e-6;

/**
 * Height of the drop that just bottoms, m, for every spacer count and pressure of a grid.
 *
 * As `bottomingHeight`, with each cell's search begun from its neighbours' answers; docs/equations/frame.md#hit-height.
 * @param spacers counts that the unit takes. @param gaugePressures in rising order, Pa.
 * @throws SpringInputError if pressures do not rise or a cell cannot be built.
 */
export function bottomingGrid(
  unit: AirSpringUnit,
  fill: GridFill,
  end: SprungEnd,
  spacers: readonly number[],
  gaugePressures: readonly GaugePascal[],
): readonly GridCell[] {
  requireSprungEnd(end);
  gaugePressures.forEach((pressure, i) => {
    const previous = gaugePressures[i - 1];
    if (previous !== undefined && !(pressure > previous)) {
      throw new SpringInputError(`gaugePressures[${i}]`, pressure, 'Pa', `above the one before, ${previous}`);
    }
  });
  return spacers.flatMap((count) => {
    const known: number[] = [];
    return gaugePressures.map((pressure) => {
      const spring = airSpring(unit, { ...fill, spacers: count, gaugePressure: gaugePascal(pressure) });
      const search = new HeightSearch(spring, end, GRID_TOLERANCE);
      const guess = extrapolate(known);
      const bottoming =
        guess === undefined ? search.heightFor(unit.stroke) : search.heightNear(unit.stroke, guess);
      if (bottoming.status === 'found') known.push(bottoming.height);
      return { spacers: count, gaugePressure: pressure, bottoming };
    });
  });
}

/** Next of evenly spaced values from the last three: their parabola, or what fewer of them allow. */
function extrapolate(known: readonly number[]): number | undefined {
  const [a, b, c] = known.slice(-3);
  if (a === undefined) return undefined;
  if (b === undefined) return a;
  return c === undefined ? 2 * b - a : 3 * c - 3 * b + a;
}
