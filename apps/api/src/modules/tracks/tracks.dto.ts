import { answerOf } from '../../platform/http/answer.js';
import { IdField, NumberField, TextField, TextsField } from '../../platform/http/fields.js';
import { pageOf } from '../../platform/http/page.js';
import { VersionField } from '../../platform/http/version-field.js';

export class TrackInputDto {
  @TextField({ description: 'Name.', maxLength: 80, example: 'Quarry Stairs' })
  name: string;

  @NumberField({
    description: 'Altitude of the place where pressures are set.',
    unit: 'm',
    minimum: -400,
    maximum: 5_000,
    example: 1_450,
  })
  altitudeM: number;

  @TextsField({
    description: 'Names of the sections in riding order.',
    maxItems: 30,
    maxLength: 80,
    example: ['Upper woods', 'Stairs'],
    optional: true,
  })
  sections?: string[];

  @TextField({
    description: 'Note.',
    minLength: 0,
    maxLength: 2_000,
    example: 'Two drops near the end.',
    optional: true,
  })
  note?: string;
}

export class TrackDto extends answerOf(TrackInputDto) {
  @IdField({ description: 'The track.' })
  id: string;

  @VersionField()
  version: number;
}

export class TrackPageDto extends pageOf(TrackDto) {}
