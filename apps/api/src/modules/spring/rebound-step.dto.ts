import { ChoiceField, NumberField, PartField } from '../../platform/http/fields.js';
import { EngineAnswerDto } from './answer.dto.js';
import { FillDto, withEnd } from './end.dto.js';

export class ReboundStepAskDto {
  @PartField({ description: 'What is in the unit before the change.', type: () => FillDto })
  before: FillDto;

  @PartField({ description: 'What is in the unit after the change.', type: () => FillDto })
  after: FillDto;
}

export class ReboundStepQuestionDto extends withEnd(ReboundStepAskDto) {}

const ratio = { unit: '1', minimum: 0, maximum: 1e6, nullable: true };
const DIRECTIONS = ['slower', 'faster', 'keep'] as const;

export class ReboundStepAnswerDto extends EngineAnswerDto {
  @ChoiceField({
    description: "'no-sag': it does not settle before deep travel.",
    choices: ['told', 'no-sag'],
  })
  status: 'told' | 'no-sag';

  @NumberField({
    ...ratio,
    description: 'Spring rate from sag to deep travel, after over before; null if not told.',
    example: 1.12,
  })
  rateRatio: number | null;

  @NumberField({
    ...ratio,
    description: 'Rebound damping that keeps the way of returning, after over before; null if not told.',
    example: 1.06,
  })
  dampingRatio: number | null;

  @ChoiceField({
    description: 'Which way to try the rebound; null if not told.',
    choices: DIRECTIONS,
    nullable: true,
  })
  direction: (typeof DIRECTIONS)[number] | null;
}
