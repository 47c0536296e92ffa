import { answerOf } from '../../platform/http/answer.js';
import { ChoiceField, DayField, IdField, NumberField, TextField } from '../../platform/http/fields.js';
import { PageQuery, pageOf } from '../../platform/http/page.js';
import { VersionField } from '../../platform/http/version-field.js';
import { CONDITIONS, type Condition } from './conditions.js';

export class SessionInputDto {
  @IdField({ description: 'The track.' })
  trackId: string;

  @DayField({ description: 'The day.', example: '2026-05-09' })
  day: string;

  @ChoiceField({ description: 'State of the ground.', choices: CONDITIONS })
  condition: Condition;

  @NumberField({
    description: 'Air temperature; null: not recorded.',
    unit: '°C',
    minimum: -40,
    maximum: 55,
    example: 6,
    optional: true,
    nullable: true,
  })
  airTemperatureC?: number | null;

  @NumberField({
    description: 'Absolute air pressure read at the track; null: from its altitude.',
    unit: 'hPa',
    minimum: 500,
    maximum: 1_085,
    example: 851,
    optional: true,
    nullable: true,
  })
  stationPressureHpa?: number | null;

  @TextField({
    description: 'Note.',
    minLength: 0,
    maxLength: 2_000,
    example: 'Drying from noon on.',
    optional: true,
  })
  note?: string;
}

export class SessionDto extends answerOf(SessionInputDto) {
  @IdField({ description: 'The session.' })
  id: string;

  @VersionField()
  version: number;
}

export class SessionPageDto extends pageOf(SessionDto) {}

export class SessionListQuery extends PageQuery {
  @IdField({ description: 'Only sessions on this track.', optional: true })
  trackId?: string;
}
