import type { EndBaseline, EvaluatedFill } from '../http/reads/baselines.js';
import type { StrokeMarks } from '../ui/stroke-bar/layout.js';

/** What a set-up of one end uses of its stroke on a track, as marks of a stroke bar. */
export function strokeMarks(end: EndBaseline, fill: EvaluatedFill): StrokeMarks {
  return {
    strokeMm: end.strokeMm,
    bumperStartMm: end.bumperStartMm,
    sagMm: fill.sagMm,
    medianHitMm: fill.medianTravelMm,
    highHit: { mm: fill.travel95Mm },
  };
}
