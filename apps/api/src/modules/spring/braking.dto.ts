import { ChoiceField, NumberField, PartField, TextField } from '../../platform/http/fields.js';
import { EngineAnswerDto, TravelField } from './answer.dto.js';
import { BrakingFiguresDto } from './braking-figures.dto.js';
import { FillDto, withEnd } from './end.dto.js';
import { UncertaintyDto } from './uncertainty.dto.js';

export class BrakingAskDto {
  @PartField({ description: 'What is in the fork.', type: () => FillDto })
  fill: FillDto;

  @NumberField({
    description: 'Slope, downhill positive.',
    unit: '°',
    minimum: -60,
    maximum: 60,
    example: 15,
  })
  slopeDeg: number;

  @NumberField({
    description: 'Deceleration along the ground; 0 at steady speed.',
    unit: 'm/s²',
    minimum: 0,
    maximum: 15,
    example: 4,
  })
  decelerationMPerS2: number;

  @NumberField({
    description: 'Part of the braking that the front wheel does; 100 % if left out.',
    unit: '%',
    minimum: 0,
    maximum: 100,
    example: 70,
    optional: true,
  })
  frontBrakeSharePct?: number;
}

export class BrakingQuestionDto extends withEnd(BrakingAskDto) {
  @PartField({ description: 'Rider and bike together.', type: () => BrakingFiguresDto })
  bike: BrakingFiguresDto;
}

export const BRAKING_ENDS = [
  'settled',
  'topped-out',
  'bottomed',
  'rear-wheel-lifts',
  'not-converged',
] as const;

const load = { unit: 'N', minimum: -1e5, maximum: 1e5 };

export class BrakingAnswerDto extends EngineAnswerDto {
  @ChoiceField({ description: 'Where the fork settles, or why it does not.', choices: BRAKING_ENDS })
  status: (typeof BRAKING_ENDS)[number];

  @TextField({
    description: 'In words, where there is something to say.',
    minLength: 0,
    maxLength: 300,
    example: 'the rear wheel leaves the ground first',
  })
  message: string;

  @TravelField('Travel of the fork; null where the rear wheel lifts.', 96, { nullable: true })
  travelMm: number | null;

  @NumberField({
    description: 'Travel beyond the sag on the level; null where there is no such travel or sag.',
    unit: 'mm',
    minimum: -300,
    maximum: 300,
    example: 63,
    nullable: true,
  })
  diveMm: number | null;

  @NumberField({
    description: 'Head angle from the ground with that travel; null where the rear wheel lifts.',
    unit: '°',
    minimum: 0,
    maximum: 180,
    example: 67.9,
    nullable: true,
  })
  headAngleDeg: number | null;

  @NumberField({
    ...load,
    description: 'Load along the fork; null where the rear wheel lifts.',
    example: 690,
    nullable: true,
  })
  axialLoadN: number | null;

  @NumberField({ ...load, description: 'Load on the front wheel.', example: 860 })
  frontLoadN: number;

  @NumberField({ ...load, description: 'Load on the rear wheel; negative where it lifts.', example: 82 })
  rearLoadN: number;

  @NumberField({
    description: 'Deceleration at which the rear wheel leaves the ground on this slope.',
    unit: 'm/s²',
    minimum: -100,
    maximum: 100,
    example: 4.1,
  })
  liftDecelerationMPerS2: number;

  @PartField({
    description: 'Of travelMm; null where it does not settle.',
    type: () => UncertaintyDto,
    nullable: true,
  })
  uncertainty: UncertaintyDto | null;
}
