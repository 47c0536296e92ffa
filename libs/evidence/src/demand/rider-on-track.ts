import type { DemandDesign } from './design.js';

/**
 * How many riders must have how many values on each of how many tracks before the scatter of pairs is told from that of
 * riders, tracks and runs by the runs rather than by the prior (judgement: eight or more degrees of freedom for the
 * pairs, two values to spare in each). It is fitted in any case: fixed below, it left intervals of new pairs too narrow.
 */
const FEWEST_RIDERS = 5;
const FEWEST_TRACKS = 3;
const FEWEST_VALUES = 3;

/** Whether the readings can tell how far riders differ on single tracks. Bounds do not count: they hardly tell a scatter. */
export function tellsRiderOnTrack(design: DemandDesign): boolean {
  const values = new Int32Array(design.pairs.length);
  for (const cell of design.exact.cell) {
    const pair = design.cellPair[cell] as number;
    values[pair] = (values[pair] as number) + 1;
  }
  const tracks = new Int32Array(design.riders.length);
  for (const [pair, { rider }] of design.pairs.entries()) {
    if ((values[pair] as number) >= FEWEST_VALUES) tracks[rider] = (tracks[rider] as number) + 1;
  }
  return tracks.filter((count) => count >= FEWEST_TRACKS).length >= FEWEST_RIDERS;
}
