import {
  ChoiceField,
  DayField,
  FlagField,
  IdField,
  MomentField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { answerOf } from '../../platform/http/answer.js';
import { PageQuery, pageOf } from '../../platform/http/page.js';
import { CONDITIONS, type Condition } from '../sessions/conditions.js';
import { MAX_SECTIONS } from '../tracks/tracks.dto.js';
import type { HitKind } from './ring-reading.entity.js';
import { LONGEST_RUN_S, RatingsDto, SectionTimeDto } from './run-input.dto.js';

/** The hit height behind a ring reading. */
export class HitDto {
  @ChoiceField({
    description: 'Whether the reading tells the height, or only a bound of it.',
    choices: ['exact', 'at-least', 'at-most'],
  })
  kind: HitKind;

  @NumberField({
    description: 'Drop to flat that would use the same travel, or its bound.',
    unit: 'm',
    minimum: 0,
    maximum: 20,
    example: 0.47,
  })
  heightM: number;

  @NumberField({
    description: 'Lower end of the 90 % interval from ring, gauge and mass.',
    unit: 'm',
    minimum: 0,
    maximum: 20,
    example: 0.42,
  })
  lowerM: number;

  @NumberField({
    description: "Upper end of the 90 % interval; null for 'at-least'.",
    unit: 'm',
    minimum: 0,
    maximum: 50,
    example: 0.53,
    nullable: true,
  })
  upperM: number | null;

  @NumberField({
    description: 'Natural logarithm of the height in metres.',
    unit: '1',
    minimum: -20,
    maximum: 5,
    example: -0.755,
  })
  logHeight: number;

  @NumberField({
    description: 'Its standard uncertainty from ring and gauge.',
    unit: '1',
    minimum: 0,
    maximum: 20,
    example: 0.07,
  })
  logSd: number;
}

export class EndReadingDto {
  @NumberField({ description: 'Travel used.', unit: 'mm', minimum: 0, maximum: 300, example: 152 })
  travelUsedMm: number;

  @NumberField({ description: 'Travel left.', unit: 'mm', minimum: 0, maximum: 300, example: 18 })
  travelLeftMm: number;

  @NumberField({
    description: 'Standard uncertainty of the reading.',
    unit: 'mm',
    minimum: 0.1,
    maximum: 20,
    example: 2,
  })
  readingSdMm: number;

  @PartField({
    description:
      'The hit height behind it; null where the set-up is so soft that the reading tells nothing, and for its rider while a blind plan with the run is open.',
    type: () => HitDto,
    nullable: true,
  })
  hit: HitDto | null;
}

export class VoidDto {
  @TextField({
    description: 'Why the run is void.',
    maxLength: 500,
    example: 'Slid out in the second corner.',
  })
  reason: string;

  @FlagField({ description: 'Whether its ring readings still count.', example: false })
  readingsCount: boolean;

  @MomentField({ description: 'When it was voided.', example: '2026-05-09T10:35:00Z' })
  at: string;
}

/** How it felt, each rating given or null. */
class RunRatingsDto extends answerOf(RatingsDto) {}

export class RunDto {
  @IdField({ description: 'The run.' })
  id: string;

  @IdField({ description: 'The session.' })
  sessionId: string;

  @IdField({ description: 'The track.' })
  trackId: string;

  @DayField({ description: 'The day.', example: '2026-05-09' })
  day: string;

  @ChoiceField({ description: 'State of the ground.', choices: CONDITIONS })
  condition: Condition;

  @IdField({ description: 'The rider.' })
  riderId: string;

  @IdField({ description: 'The bike.' })
  bikeId: string;

  @IdField({
    description: 'The set-up ridden; null for its rider while a blind plan with the run is open.',
    nullable: true,
  })
  setupId: string | null;

  @NumberField({
    description: 'Number of the run for this rider in the session.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 1e6,
    example: 3,
  })
  orderInSession: number;

  @MomentField({ description: 'When the run started.', example: '2026-05-09T10:30:00Z', nullable: true })
  startedAt: string | null;

  @NumberField({
    description: 'Time of the run; null: not timed.',
    unit: 's',
    minimum: 1,
    maximum: LONGEST_RUN_S,
    example: 187.4,
    nullable: true,
  })
  timeS: number | null;

  @PartsField({
    description: 'Times of sections in riding order; those without a time are left out.',
    type: () => SectionTimeDto,
    maxItems: MAX_SECTIONS,
  })
  sectionTimes: SectionTimeDto[];

  @PartField({ description: 'Ring of the fork; null: not read.', type: () => EndReadingDto, nullable: true })
  fork: EndReadingDto | null;

  @PartField({ description: 'Ring of the shock; null: not read.', type: () => EndReadingDto, nullable: true })
  shock: EndReadingDto | null;

  @NumberField({
    description: 'Bottom-outs of the fork that were felt; null: not said.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 100,
    example: 0,
    nullable: true,
  })
  forkBottomOuts: number | null;

  @NumberField({
    description: 'Bottom-outs of the shock that were felt; null: not said.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 100,
    example: 0,
    nullable: true,
  })
  shockBottomOuts: number | null;

  @PartField({ description: 'How it felt.', type: () => RunRatingsDto })
  ratings: Required<RatingsDto>;

  @TextField({ description: 'Note.', minLength: 0, maxLength: 2_000, example: 'Harsh on the roots.' })
  note: string;

  @PartField({ description: 'Why it does not count; null: it counts.', type: () => VoidDto, nullable: true })
  voided: VoidDto | null;

  @MomentField({ description: 'When it was stored.', example: '2026-05-09T10:34:00Z' })
  loggedAt: string;

  @IdField({ description: 'The account that logged it.' })
  loggedBy: string;
}

export class RunPageDto extends pageOf(RunDto) {}

export class RunListQuery extends PageQuery {
  @IdField({ description: 'Only runs on this track.', optional: true })
  trackId?: string;

  @IdField({ description: 'Only runs of this rider.', optional: true })
  riderId?: string;

  @IdField({ description: 'Only runs on this bike.', optional: true })
  bikeId?: string;

  @IdField({ description: 'Only runs of this session.', optional: true })
  sessionId?: string;
}
