import { metresFromMillimetres, millimetresFromMetres } from '@loamledger/units';
import { DEFAULT_READING_SD } from '../suspension/uncertainties.js';
import type { EndReadingInputDto } from './run-input.dto.js';
import { ReadingBeyondStroke, UsedAndLeftDisagree } from './runs.errors.js';

/** Ring and stroke are entered to a tenth of a millimetre: what differs by less is the same, mm. */
const SAME_MM = 0.1;
/** A ring pushed on to the end sits up to the rounding of an entered stroke beyond it, mm. */
const ROUNDING_MM = 1e-6;

/**
 * Travel used and its standard uncertainty, m, from what was entered as used, as left, or both; null if neither.
 * @throws ReadingBeyondStroke or UsedAndLeftDisagree.
 */
export function readingOf(
  end: 'fork' | 'shock',
  input: EndReadingInputDto,
  stroke: number,
): { travelUsed: number; readingSd: number } | null {
  const { travelUsedMm: used, travelLeftMm: left } = input;
  const strokeMm = Number(millimetresFromMetres(stroke).toFixed(6));
  if (used != null && used > strokeMm + ROUNDING_MM)
    throw new ReadingBeyondStroke(end, 'travelUsedMm', used, strokeMm);
  if (left != null && left > strokeMm + ROUNDING_MM)
    throw new ReadingBeyondStroke(end, 'travelLeftMm', left, strokeMm);
  if (used != null && left != null && Math.abs(strokeMm - used - left) > SAME_MM) {
    throw new UsedAndLeftDisagree(end, left, Number((strokeMm - used).toFixed(1)));
  }
  const usedMm = used ?? (left == null ? null : strokeMm - left);
  if (usedMm === null) return null;
  return {
    travelUsed: Math.min(metresFromMillimetres(usedMm), stroke),
    readingSd:
      input.readingSdMm === undefined ? DEFAULT_READING_SD : metresFromMillimetres(input.readingSdMm),
  };
}
