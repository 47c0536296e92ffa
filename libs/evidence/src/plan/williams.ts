import { requireBetween } from '../errors.js';

const FEWEST_ARMS = 2;
const MOST_ARMS = 26;

/**
 * Orders of `arms` set-ups for several riders, rows of arm numbers: each set-up equally often at each place, and each
 * follows each other equally often, so that what one set-up leaves behind for the next cancels (williams1949).
 *
 * Even number of arms: rows 0, k−1, 1, k−2, … shifted by 1 modulo k, k rows; odd: those and their reverses, 2k rows.
 * 2 to 26 arms; else EvidenceInputError.
 */
export function williamsRows(arms: number): number[][] {
  requireBetween('arms', arms, 'set-ups', FEWEST_ARMS, MOST_ARMS);
  const first = Array.from({ length: arms }, (_, i) => (i % 2 === 0 ? i / 2 : arms - (i + 1) / 2));
  const square = first.map((_, shift) => first.map((arm) => (arm + shift) % arms));
  return arms % 2 === 0 ? square : [...square, ...square.map((row) => row.toReversed())];
}
