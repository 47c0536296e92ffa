import { ChoiceField, NumberField, PartField, TextField } from '../../platform/http/fields.js';
import { EngineAnswerDto, HeightField, TravelField } from './answer.dto.js';
import { FillDto, withEnd } from './end.dto.js';
import { UncertaintyDto } from './uncertainty.dto.js';

const count = { unit: '1', integer: true, minimum: 0, maximum: 1e9 };
const energy = { unit: 'J', minimum: -1e6, maximum: 1e6 };

export class LandingAskDto {
  @PartField({ description: 'What is in the unit.', type: () => FillDto })
  fill: FillDto;

  @HeightField('Height of the drop to flat; 0: the load is put on suddenly.', 0.6)
  heightM: number;
}

export class LandingQuestionDto extends withEnd(LandingAskDto) {}

/** Where the energy of a landing went. */
export class EnergyDto {
  @NumberField({ ...energy, description: 'What came in: of the drop and of the travel.', example: 262 })
  inputJ: number;

  @NumberField({ ...energy, description: 'Into the gas.', example: 130 })
  gasJ: number;

  @NumberField({ ...energy, description: 'Into the damper.', example: 118 })
  damperJ: number;

  @NumberField({ ...energy, description: 'Into the bumper.', example: 0 })
  bumperJ: number;

  @NumberField({ ...energy, description: 'Into friction.', example: 2.8 })
  frictionJ: number;

  @NumberField({
    ...energy,
    description: 'Left over at the end of the stroke; 0 unless bottomed.',
    example: 0,
  })
  leftOverJ: number;

  @NumberField({ ...energy, description: 'What the computation lost of it.', example: 1e-6 })
  residualJ: number;
}

export const HIT_ENDS = ['peak', 'bottomed', 'not-converged'] as const;

export class LandingAnswerDto extends EngineAnswerDto {
  @ChoiceField({ description: 'How the landing ends.', choices: HIT_ENDS })
  status: (typeof HIT_ENDS)[number];

  @TextField({ description: 'In words.', maxLength: 300, example: 'came to rest within the stroke' })
  message: string;

  @TravelField('Travel used.', 148)
  travelMm: number;

  @NumberField({
    description: 'Travel used, of the stroke.',
    unit: '%',
    minimum: 0,
    maximum: 100,
    example: 87,
  })
  travelPct: number;

  @TravelField('Travel left.', 22)
  reserveMm: number;

  @TravelField('Vertical travel of the wheel.', 133)
  wheelTravelMm: number;

  @NumberField({
    description: 'Time from touchdown to the peak.',
    unit: 'ms',
    minimum: 0,
    maximum: 1e6,
    example: 88,
  })
  timeMs: number;

  @NumberField({
    description: 'Greatest force on the way.',
    unit: 'N',
    minimum: -1e9,
    maximum: 1e9,
    example: 2_300,
  })
  peakForceN: number;

  @PartField({ description: 'Where the energy went.', type: () => EnergyDto })
  energy: EnergyDto;

  @NumberField({ ...count, description: 'Steps of the computation.', example: 31 })
  steps: number;

  @NumberField({ ...count, description: 'Evaluations of the equation of motion.', example: 190 })
  evaluations: number;

  @PartField({
    description: 'Of travelMm; null where it bottoms out or is not computed to an end.',
    type: () => UncertaintyDto,
    nullable: true,
  })
  uncertainty: UncertaintyDto | null;
}

export class HitHeightAskDto {
  @PartField({ description: 'What is in the unit.', type: () => FillDto })
  fill: FillDto;

  @TravelField('Travel used, by the O-ring.', 148)
  travelUsedMm: number;
}

export class HitHeightQuestionDto extends withEnd(HitHeightAskDto) {}

const KINDS = ['exact', 'at-least', 'at-most'] as const;

export class HitHeightAnswerDto extends EngineAnswerDto {
  @ChoiceField({ description: 'Whether the reading tells a height.', choices: ['solved', 'not-solved'] })
  status: 'solved' | 'not-solved';

  @TextField({
    description: 'Why not, where it does not.',
    minLength: 0,
    maxLength: 300,
    example: '',
  })
  message: string;

  @ChoiceField({
    description:
      "'at-least': too near full travel to tell from a bottom-out; 'at-most': no more than a load put on suddenly uses. null if not solved.",
    choices: KINDS,
    nullable: true,
  })
  kind: (typeof KINDS)[number] | null;

  @HeightField('Drop to flat that would use this travel; null if not solved.', 0.61, { nullable: true })
  heightM: number | null;

  @NumberField({
    description: 'Lower end of the 90 % interval; null if not solved.',
    unit: 'm',
    minimum: 0,
    maximum: 1e6,
    example: 0.54,
    nullable: true,
  })
  lowerM: number | null;

  @NumberField({
    description: "Upper end of the 90 % interval; null if not solved, or if it is 'at-least'.",
    unit: 'm',
    minimum: 0,
    maximum: 1e6,
    example: 0.69,
    nullable: true,
  })
  upperM: number | null;

  @NumberField({
    description: "Standard uncertainty of the height's logarithm; null if not solved.",
    unit: '1, natural logarithm',
    minimum: 0,
    maximum: 1e6,
    example: 0.07,
    nullable: true,
  })
  logSd: number | null;

  @NumberField({ ...count, description: 'Landings computed.', example: 14 })
  landings: number;
}

export class FullestHitAskDto {
  @PartField({ description: 'What is in the unit.', type: () => FillDto })
  fill: FillDto;
}

export class FullestHitQuestionDto extends withEnd(FullestHitAskDto) {}

export const HEIGHT_ENDS = ['found', 'below-sudden-load', 'beyond-range', 'not-converged'] as const;

export class FullestHitAnswerDto extends EngineAnswerDto {
  @ChoiceField({
    description:
      "'below-sudden-load': it bottoms out without any drop; 'beyond-range': nothing up to 20 m bottoms it out.",
    choices: HEIGHT_ENDS,
  })
  status: (typeof HEIGHT_ENDS)[number];

  @HeightField('Drop to flat that just bottoms out; null where there is none.', 0.83, { nullable: true })
  heightM: number | null;

  @NumberField({ ...count, description: 'Landings computed.', example: 7 })
  landings: number;

  @PartField({
    description: 'Of heightM; null where there is none.',
    type: () => UncertaintyDto,
    nullable: true,
  })
  uncertainty: UncertaintyDto | null;
}
