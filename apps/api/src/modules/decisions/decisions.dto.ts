import { ApiProperty } from '@nestjs/swagger';
import {
  ChoiceField,
  IdField,
  MomentField,
  NumberField,
  PartField,
  TextField,
} from '../../platform/http/fields.js';
import { PageQuery, pageOf } from '../../platform/http/page.js';
import { VersionField } from '../../platform/http/version-field.js';
import { OUTCOMES, type Outcome } from './decision.entity.js';

/** What the engine and the demand model expected of one end at the time of a decision. */
export class ExpectedEndDto {
  @NumberField({ description: 'Sag, of the stroke.', unit: '%', minimum: 0, maximum: 100, example: 18.1 })
  sagPct: number;

  @NumberField({
    description: 'Travel used by the median run; null where it was decided for no track.',
    unit: 'mm',
    minimum: 0,
    maximum: 300,
    example: 132,
    nullable: true,
  })
  medianTravelMm: number | null;

  @NumberField({
    description: 'Travel used by the 95th-percentile run; null where it was decided for no track.',
    unit: 'mm',
    minimum: 0,
    maximum: 300,
    example: 161,
    nullable: true,
  })
  travel95Mm: number | null;

  @NumberField({
    description: 'Probability that a run bottoms out; null where it was decided for no track.',
    unit: '%',
    minimum: 0,
    maximum: 100,
    example: 4,
    nullable: true,
  })
  riskPct: number | null;
}

export class ExpectationDto {
  @PartField({ description: 'The fork.', type: () => ExpectedEndDto, nullable: true })
  fork: ExpectedEndDto | null;

  @PartField({ description: 'The shock.', type: () => ExpectedEndDto, nullable: true })
  shock: ExpectedEndDto | null;
}

export class DecisionDto {
  @IdField({ description: 'The decision.' })
  id: string;

  @MomentField({ description: 'When it was decided.', example: '2026-05-09T10:30:00Z' })
  decidedAt: string;

  @IdField({ description: 'The bike.' })
  bikeId: string;

  @IdField({ description: 'The set-up before; null for the first.', nullable: true })
  fromSetupId: string | null;

  @IdField({ description: 'The set-up after.' })
  toSetupId: string;

  @IdField({ description: 'The track it was decided for, if for one.', nullable: true })
  trackId: string | null;

  @IdField({ description: 'The baseline that was taken, if one was.', nullable: true })
  baselineId: string | null;

  @TextField({ description: 'Why.', maxLength: 1_000, example: 'Stay higher under braking.' })
  reason: string;

  @PartField({
    description: 'What was expected of it at that time; null where nothing was computed.',
    type: () => ExpectationDto,
    nullable: true,
  })
  expected: ExpectationDto | null;

  @IdField({ description: 'The account that decided.' })
  decidedBy: string;

  @ChoiceField({ description: 'What came of it; null while it is open.', choices: OUTCOMES, nullable: true })
  outcome: Outcome | null;

  @TextField({
    description: 'What was seen.',
    minLength: 0,
    maxLength: 1_000,
    example: 'Held up well.',
    nullable: true,
  })
  outcomeNote: string | null;

  @ApiProperty({
    type: 'string',
    format: 'date-time',
    nullable: true,
    example: '2026-05-10T10:30:00Z',
    description: 'When the outcome was entered.',
  })
  outcomeAt: string | null;

  @VersionField()
  version: number;
}

export class DecisionPageDto extends pageOf(DecisionDto) {}

export class DecisionListQuery extends PageQuery {
  @IdField({ description: 'Only decisions about this bike.', optional: true })
  bikeId?: string;
}

export class OutcomeInputDto {
  @ChoiceField({ description: 'What came of the decision.', choices: ['kept', 'superseded'] })
  outcome: 'kept' | 'superseded';

  @TextField({
    description: 'What was seen.',
    minLength: 0,
    maxLength: 1_000,
    example: 'Held up well.',
    optional: true,
  })
  note?: string;
}
