import { reboundStep } from '@loamledger/spring';
import {
  aboutAnswer,
  askEngine,
  filledWith,
  NO_UNIT,
  PRESSURE_UNIT,
  type QuestionEnd,
} from './question-end.js';
import type { FillDto } from './end.dto.js';
import type { ReboundStepAnswerDto, ReboundStepAskDto } from './rebound-step.dto.js';

/** Which way to look for rebound after the spring has changed. */
export function reboundStepAnswer(end: QuestionEnd, ask: ReboundStepAskDto): ReboundStepAnswerDto {
  const before = filled(end, 'before', ask.before);
  const after = filled(end, 'after', ask.after);
  const step = reboundStep(before.spring, after.spring, before.scene.end);
  const isTold = step.status === 'told';
  return {
    status: step.status,
    rateRatio: isTold ? step.rateRatio : null,
    dampingRatio: isTold ? step.dampingRatio : null,
    direction: isTold ? step.direction : null,
    ...aboutAnswer(end),
  };
}

const filled = (end: QuestionEnd, field: 'before' | 'after', fill: FillDto) =>
  askEngine(
    {
      'fill.gaugePressure': { field: `${field}.pressurePsi`, ...PRESSURE_UNIT },
      'fill.spacers': { field: `${field}.spacers`, ...NO_UNIT },
    },
    () => filledWith(end, fill),
  );
