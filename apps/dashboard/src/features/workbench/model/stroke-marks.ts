import type { StrokeMarks } from '../../../shared/ui/stroke-bar/layout.js';
import type { Bench, View } from './bench.js';
import type { Intervals } from './uncertainty.js';

/** What a set-up uses of its stroke, with the interval of the big hit where it is known by now. */
export function strokeMarksOf(
  { end: { unit } }: Bench,
  { answers: { figures } }: View,
  intervals: Intervals | undefined,
): StrokeMarks {
  const { sagMm, medianHitMm, highHitMm } = figures;
  const interval = intervals?.highHitMm;
  return {
    strokeMm: unit.strokeMm,
    bumperStartMm: unit.strokeMm - unit.bumperLengthMm,
    sagMm: sagMm ?? undefined,
    medianHitMm: medianHitMm ?? undefined,
    highHit:
      highHitMm === null ? undefined : { mm: highHitMm, lowMm: interval?.lower, highMm: interval?.upper },
  };
}
