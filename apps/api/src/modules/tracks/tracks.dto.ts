import { answerOf } from '../../platform/http/answer.js';
import { IdField, NumberField, PartField, TextField, TextsField } from '../../platform/http/fields.js';
import { pageOf } from '../../platform/http/page.js';
import { VersionField } from '../../platform/http/version-field.js';

/** No track has more sections. */
export const MAX_SECTIONS = 30;

const latitude = (description: string, example: number) =>
  NumberField({ description, unit: '°', minimum: -89, maximum: 89, example });
const longitude = (description: string, example: number) =>
  NumberField({ description, unit: '°', minimum: -180, maximum: 180, example });

/** A line across the track, from one side to the other, by coordinates of the World Geodetic System. */
export class GateDto {
  @latitude('Latitude of its one end.', 46.50211) fromLatitudeDeg: number;
  @longitude('Longitude of its one end.', 8.10347) fromLongitudeDeg: number;
  @latitude('Latitude of its other end.', 46.50218) toLatitudeDeg: number;
  @longitude('Longitude of its other end.', 8.10361) toLongitudeDeg: number;
}

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
    maxItems: MAX_SECTIONS,
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

  @PartField({
    description: 'Where run times begin, 2 to 500 m long; null: not told.',
    type: () => GateDto,
    optional: true,
    nullable: true,
  })
  startGate?: GateDto | null;

  @PartField({
    description: 'Where run times end, 2 to 500 m long; null: not told.',
    type: () => GateDto,
    optional: true,
    nullable: true,
  })
  finishGate?: GateDto | null;
}

export class TrackDto extends answerOf(TrackInputDto) {
  @IdField({ description: 'The track.' })
  id: string;

  @VersionField()
  version: number;
}

export class TrackPageDto extends pageOf(TrackDto) {}
