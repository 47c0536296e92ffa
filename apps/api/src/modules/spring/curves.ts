import { fastCurve, settledCurve, type ForceCurve } from '@loamledger/spring';
import { gaugePascal, millimetresFromMetres, psiFromGaugePascal } from '@loamledger/units';
import type { CurveDto, CurvesAnswerDto, CurvesAskDto } from './curves.dto.js';
import { aboutAnswer, askEngine, filledWith, type QuestionEnd } from './question-end.js';

const DEFAULT_POINTS = 101;
const NEWTONS_PER_METRE = 1_000;

/** Force over travel, pressed slowly and in a hit. */
export function curvesAnswer(end: QuestionEnd, ask: CurvesAskDto): CurvesAnswerDto {
  return askEngine({}, () => {
    const { spring } = filledWith(end, ask.fill);
    const points = ask.points ?? DEFAULT_POINTS;
    return {
      settled: curveAnswer(settledCurve(spring, points), end.ambient.pressure),
      fast: curveAnswer(fastCurve(spring, points), end.ambient.pressure),
      ...aboutAnswer(end),
    };
  });
}

const curveAnswer = (curve: ForceCurve, ambientPressure: number): CurveDto => ({
  points: curve.points.map((point) => ({
    travelMm: millimetresFromMetres(point.travel),
    forceN: point.force,
    stiffnessNPerMm: point.stiffness / NEWTONS_PER_METRE,
    positivePressurePsi: psiFromGaugePascal(gaugePascal(point.positivePressure - ambientPressure)),
  })),
  progression: curve.progression,
  energyToFullTravelJ: curve.energyToFullTravel,
});
