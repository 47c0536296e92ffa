import { ChoiceField, NumberField, PartField, TextField } from '../../platform/http/fields.js';
import { EngineAnswerDto, TravelField } from './answer.dto.js';
import { FillDto, withEnd } from './end.dto.js';
import { UncertaintyDto } from './uncertainty.dto.js';

export class SagAskDto {
  @PartField({ description: 'What is in the unit.', type: () => FillDto })
  fill: FillDto;
}

export class SagQuestionDto extends withEnd(SagAskDto) {}

export const SETTLED = ['settled', 'topped-out', 'bottomed', 'not-converged'] as const;

export class SagAnswerDto extends EngineAnswerDto {
  @ChoiceField({ description: 'Where the spring settles.', choices: SETTLED })
  status: (typeof SETTLED)[number];

  @TravelField('Sag; 0 if topped out, the stroke if bottomed.', 30.8)
  sagMm: number;

  @NumberField({ description: 'Sag, of the stroke.', unit: '%', minimum: 0, maximum: 100, example: 18.1 })
  sagPct: number;

  @TravelField('Vertical travel of the wheel at sag.', 27.7)
  wheelTravelMm: number;

  @PartField({
    description: 'Of sagMm; null where it does not settle.',
    type: () => UncertaintyDto,
    nullable: true,
  })
  uncertainty: UncertaintyDto | null;
}

export class PressureForSagAskDto {
  @NumberField({
    description: 'Volume spacers in the positive chamber.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 30,
    example: 2,
  })
  spacers: number;

  @NumberField({ description: 'Sag wanted, of the stroke.', unit: '%', minimum: 1, maximum: 90, example: 18 })
  sagPct: number;
}

export class PressureForSagQuestionDto extends withEnd(PressureForSagAskDto) {}

/** A pressure that answers a question, or why none does. */
export class PressureDto {
  @ChoiceField({ description: 'Whether there is one.', choices: ['found', 'out-of-reach'] })
  status: 'found' | 'out-of-reach';

  @TextField({
    description: 'In words, where there is something to say.',
    minLength: 0,
    maxLength: 500,
    example: 'it would take less than the pressure of the air around',
  })
  message: string;

  @NumberField({
    description: 'Air pressure, gauge; null where there is none.',
    unit: 'psi',
    minimum: 0,
    maximum: 1_000,
    example: 68.4,
    nullable: true,
  })
  pressurePsi: number | null;

  @PartField({
    description: 'Of pressurePsi; null where there is none.',
    type: () => UncertaintyDto,
    nullable: true,
  })
  uncertainty: UncertaintyDto | null;
}

export class PressureForSagAnswerDto extends EngineAnswerDto {
  @PartField({ description: 'The pressure.', type: () => PressureDto })
  pressure: PressureDto;
}
