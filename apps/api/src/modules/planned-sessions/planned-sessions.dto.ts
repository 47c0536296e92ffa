import { answerOf } from '../../platform/http/answer.js';
import { ClockField, DayField, IdField, IdsField, TextField } from '../../platform/http/fields.js';
import { PageQuery, pageOf } from '../../platform/http/page.js';
import { VersionField } from '../../platform/http/version-field.js';

const MAX_RIDERS = 50;

export class PlannedSessionInputDto {
  @IdField({ description: 'The track.' })
  trackId: string;

  @DayField({ description: 'The day.', example: '2026-05-09' })
  day: string;

  @ClockField({ description: 'When it starts, by the clock at the track.', example: '09:30' })
  startsAt: string;

  @IdsField({ description: 'Who rides.', minItems: 1, maxItems: MAX_RIDERS })
  riderIds: string[];

  @IdField({
    description: 'The test plan that is ridden; null: ride and log.',
    optional: true,
    nullable: true,
  })
  testPlanId?: string | null;

  @TextField({
    description: 'Note.',
    minLength: 0,
    maxLength: 2_000,
    example: 'Two slow runs first.',
    optional: true,
  })
  note?: string;
}

export class PlannedSessionDto extends answerOf(PlannedSessionInputDto) {
  @IdField({ description: 'The planned session.' })
  id: string;

  @VersionField()
  version: number;
}

export class PlannedSessionPageDto extends pageOf(PlannedSessionDto) {}

export class PlannedSessionListQuery extends PageQuery {
  @IdField({ description: 'Only sessions on this track.', optional: true })
  trackId?: string;

  @DayField({ description: 'Only sessions on this day or later.', example: '2026-05-09', optional: true })
  fromDay?: string;

  @DayField({ description: 'Only sessions on this day or earlier.', example: '2026-05-10', optional: true })
  toDay?: string;
}
