import { ChoiceField, NumberField, PartField, TextField } from '../../platform/http/fields.js';
import { EngineAnswerDto, HeightField } from './answer.dto.js';
import { FillDto, withEnd } from './end.dto.js';
import { UncertaintyDto } from './uncertainty.dto.js';

export class SpacerTradeAskDto {
  @PartField({ description: 'What is in the unit now.', type: () => FillDto })
  fill: FillDto;

  @NumberField({
    description: 'Spacers to change to.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 30,
    example: 3,
  })
  spacers: number;

  @HeightField('Hit whose travel is to be kept: a drop to flat.', 0.7)
  heightM: number;
}

export class SpacerTradeQuestionDto extends withEnd(SpacerTradeAskDto) {}

/** The pressure that keeps one property. */
export class TradeTargetDto {
  @ChoiceField({ description: 'Whether there is one.', choices: ['found', 'out-of-reach'] })
  status: 'found' | 'out-of-reach';

  @TextField({
    description: 'Why not, where there is none.',
    minLength: 0,
    maxLength: 300,
    example: 'the hit bottoms as it is',
  })
  message: string;

  @NumberField({
    description: 'Air pressure, gauge; null where there is none.',
    unit: 'psi',
    minimum: 0,
    maximum: 1_000,
    example: 65.3,
    nullable: true,
  })
  pressurePsi: number | null;

  @NumberField({
    description: 'Against the pressure now; negative if air comes out; null where there is none.',
    unit: 'psi',
    minimum: -1_000,
    maximum: 1_000,
    example: -5.7,
    nullable: true,
  })
  changePsi: number | null;

  @PartField({
    description: 'Of changePsi; null where there is none.',
    type: () => UncertaintyDto,
    nullable: true,
  })
  uncertainty: UncertaintyDto | null;
}

export class SpacerTradeAnswerDto extends EngineAnswerDto {
  @PartField({ description: 'Keeps the travel that the hit uses.', type: () => TradeTargetDto })
  peakTravel: TradeTargetDto;

  @PartField({ description: 'Keeps the settled force at half travel.', type: () => TradeTargetDto })
  midStroke: TradeTargetDto;

  @PartField({ description: 'Keeps the sag.', type: () => TradeTargetDto })
  sag: TradeTargetDto;

  @TextField({
    description: 'Why the three differ, in a sentence.',
    maxLength: 500,
    example: 'A spacer raises the force little early in the stroke and much late.',
  })
  why: string;
}
