import { ApiProperty, IntersectionType } from '@nestjs/swagger';
import {
  ChoiceField,
  IdField,
  MomentField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { PageQuery, pageOf } from '../../platform/http/page.js';
import { VersionField } from '../../platform/http/version-field.js';
import { OUTCOMES, type Outcome } from './decision.entity.js';
import { ExpectationDto } from './expectation.dto.js';
import { ObservedDto } from './observed.dto.js';
import { SetupChangeDto } from './setup-change.dto.js';

export class DecisionDto {
  @IdField({ description: 'The decision.' })
  id: string;

  @MomentField({ description: 'When it was decided.', example: '2026-05-09T10:30:00Z' })
  decidedAt: string;

  @IdField({ description: 'The bike.' })
  bikeId: string;

  @IdField({ description: "The bike's rider at that time." })
  riderId: string;

  @IdField({ description: 'The set-up before; null for the first.', nullable: true })
  fromSetupId: string | null;

  @IdField({ description: 'The set-up after.' })
  toSetupId: string;

  @PartsField({
    description: 'What it changed, figure by figure; empty for the first set-up.',
    type: () => SetupChangeDto,
    maxItems: 10,
  })
  changes: SetupChangeDto[];

  @TextField({ description: 'The same in words.', maxLength: 1_000, example: 'fork: 2 → 3 spacers' })
  changesInWords: string;

  @IdField({ description: 'The track it was decided for, if for one.', nullable: true })
  trackId: string | null;

  @IdField({ description: 'The baseline that was taken, if one was.', nullable: true })
  baselineId: string | null;

  @IdField({ description: 'The test plan whose comparison it rests on, if on one.', nullable: true })
  testPlanId: string | null;

  @NumberField({
    description: 'Runs behind the expectation; null where nothing was computed.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e9,
    example: 42,
    nullable: true,
  })
  evidenceRuns: number | null;

  @TextField({ description: 'Why.', maxLength: 1_000, example: 'Stay higher under braking.' })
  reason: string;

  @PartField({
    description: 'What was expected of it at that time; null where nothing was computed.',
    type: () => ExpectationDto,
    nullable: true,
  })
  expected: ExpectationDto | null;

  @PartField({
    description:
      'What the runs of its rider on the new set-up and its track showed: until now while it is open, as it was when the outcome was entered after that.',
    type: () => ObservedDto,
  })
  observed: ObservedDto;

  @IdField({ description: 'The account that decided.' })
  decidedBy: string;

  @TextField({
    description: 'Who that is; null for somebody who has left the team.',
    maxLength: 80,
    example: 'Mechanic',
    nullable: true,
  })
  decidedByName: string | null;

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

const OUTCOME_FILTER = ['open', ...OUTCOMES] as const;

/** Which decisions. */
export class DecisionFilter {
  @IdField({ description: 'Only decisions about this bike.', optional: true })
  bikeId?: string;

  @IdField({ description: 'Only decisions for this rider.', optional: true })
  riderId?: string;

  @IdField({ description: 'Only decisions for this track.', optional: true })
  trackId?: string;

  @ChoiceField({ description: 'Only decisions that this came of.', choices: OUTCOME_FILTER, optional: true })
  outcome?: (typeof OUTCOME_FILTER)[number];
}

export class DecisionListQuery extends IntersectionType(PageQuery, DecisionFilter) {}

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
