import { airSpring, pressureForSag, sag, type PressureAnswer, type Scene } from '@loamledger/spring';
import { millimetresFromMetres, psiFromGaugePascal } from '@loamledger/units';
import {
  aboutAnswer,
  askEngine,
  filledWith,
  NO_UNIT,
  PRESSURE_UNIT,
  type QuestionEnd,
} from './question-end.js';
import type {
  PressureDto,
  PressureForSagAnswerDto,
  PressureForSagAskDto,
  SagAnswerDto,
  SagAskDto,
} from './sag.dto.js';
import { uncertaintyOf } from './uncertainty.js';
import type { UncertaintyDto } from './uncertainty.dto.js';

const PER_CENT = 100;

/** Sag under the rider standing still. */
export function sagAnswer(end: QuestionEnd, ask: SagAskDto): SagAnswerDto {
  return askEngine({}, () => {
    const { spring, scene } = filledWith(end, ask.fill);
    const settled = sag(spring, scene.end);
    return {
      status: settled.status,
      sagMm: millimetresFromMetres(settled.travel),
      sagPct: PER_CENT * settled.fraction,
      wheelTravelMm: millimetresFromMetres(settled.wheelTravel),
      uncertainty: uncertaintyOf(end, scene, millimetresFromMetres, sagTravel),
      ...aboutAnswer(end),
    };
  });
}

function sagTravel({ unit, fill, end }: Scene): number | undefined {
  const settled = sag(airSpring(unit, fill), end);
  return settled.status === 'settled' ? settled.travel : undefined;
}

/** Any pressure serves to name the end: the one that is sought replaces it. */
const ANY_PRESSURE_PSI = 60;

/** Pressure at which the sag is what is wanted. */
export function pressureForSagAnswer(end: QuestionEnd, ask: PressureForSagAskDto): PressureForSagAnswerDto {
  const fields = {
    'fill.spacers': { field: 'spacers', ...NO_UNIT },
    sagFraction: { field: 'sagPct', unit: '%', fromSi: (fraction: number) => PER_CENT * fraction },
  };
  return askEngine(fields, () => {
    const { scene } = filledWith(end, { pressurePsi: ANY_PRESSURE_PSI, spacers: ask.spacers });
    const solve = ({ unit, fill, end: sprung }: Scene) =>
      pressureForSag(unit, fill, sprung, ask.sagPct / PER_CENT);
    // What the gauge shows does not enter the answer: its own error is that of pumping to it, and is not counted.
    const uncertainty = uncertaintyOf(end, scene, PRESSURE_UNIT.fromSi, (moved) => gaugeOf(solve(moved)));
    return { pressure: pressureAnswer(solve(scene), uncertainty), ...aboutAnswer(end) };
  });
}

/** The pressure of an answer, Pa gauge, if there is one. */
export const gaugeOf = (answer: PressureAnswer): number | undefined =>
  answer.status === 'found' ? answer.gaugePressure : undefined;

/** A pressure, or why there is none, as a message. */
export const pressureAnswer = (answer: PressureAnswer, uncertainty: UncertaintyDto | null): PressureDto => ({
  status: answer.status,
  message: answer.message,
  pressurePsi: answer.status === 'found' ? psiFromGaugePascal(answer.gaugePressure) : null,
  uncertainty,
});
