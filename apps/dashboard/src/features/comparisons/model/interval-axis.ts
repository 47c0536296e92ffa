import type { ArmComparison } from '../api/comparison.js';
import { axisBetween, type Axis } from './axis.js';

/** The axis reaches a little beyond the margin, and no farther than this many margins or twice the differences. */
const LEAST_MARGINS = 1.5;
const MOST_MARGINS = 10;
const TICKS = 6;

/** An axis for intervals of difference; an interval that reaches beyond it is drawn with an arrow. */
export function intervalAxis(
  arms: readonly Pick<ArmComparison, 'differencePct' | 'lowPct' | 'highPct'>[],
  marginPct: number,
): Axis {
  const differences = arms.map(({ differencePct }) => 2 * Math.abs(differencePct ?? 0));
  const ends = arms.flatMap(({ lowPct, highPct }) => [Math.abs(lowPct ?? 0), Math.abs(highPct ?? 0)]);
  const most = Math.max(MOST_MARGINS * marginPct, ...differences);
  const reach = Math.min(most, Math.max(LEAST_MARGINS * marginPct, ...ends, ...differences));
  return axisBetween(-reach, reach, TICKS);
}
