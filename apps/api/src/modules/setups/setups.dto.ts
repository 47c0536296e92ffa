import { answerOf } from '../../platform/http/answer.js';
import { IdField, MomentField, NumberField, PartField, TextField } from '../../platform/http/fields.js';
import { PageQuery, pageOf } from '../../platform/http/page.js';

const clicks = {
  unit: 'clicks from fully closed',
  integer: true,
  minimum: 0,
  maximum: 60,
  optional: true,
  nullable: true,
};

/** What one end of a bike is set to. */
export class EndSetupInputDto {
  @NumberField({ description: 'Air pressure, gauge.', unit: 'psi', minimum: 5, maximum: 600, example: 71 })
  pressurePsi: number;

  @NumberField({
    description: 'Volume spacers in the positive chamber.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 30,
    example: 2,
  })
  spacers: number;

  @NumberField({ ...clicks, description: 'Rebound; null: not recorded.', example: 8 })
  reboundClicks?: number | null;

  @NumberField({ ...clicks, description: 'Compression; null: not recorded.', example: 5 })
  compressionClicks?: number | null;
}

export class EndSetupDto extends answerOf(EndSetupInputDto) {
  @IdField({ description: 'The fork or shock that was in the bike.' })
  unitId: string;
}

export class SetupInputDto {
  @IdField({ description: 'The bike.' })
  bikeId: string;

  @PartField({ description: 'The fork.', type: () => EndSetupInputDto })
  fork: EndSetupInputDto;

  @PartField({
    description: 'The shock; null for a bike without one.',
    type: () => EndSetupInputDto,
    optional: true,
    nullable: true,
  })
  shock?: EndSetupInputDto | null;

  @NumberField({
    description: 'Altitude where the pressures were pumped; null: at the track on the day.',
    unit: 'm',
    minimum: -400,
    maximum: 5_000,
    example: 420,
    optional: true,
    nullable: true,
  })
  filledAltitudeM?: number | null;

  @NumberField({
    description: 'Air temperature where the pressures were pumped; needed with the altitude.',
    unit: '°C',
    minimum: -40,
    maximum: 55,
    example: 21,
    optional: true,
    nullable: true,
  })
  filledTemperatureC?: number | null;

  @TextField({ description: 'Why it was changed.', maxLength: 1_000, example: 'Stay higher under braking.' })
  reason: string;

  @IdField({ description: 'The track it is meant for, if for one.', optional: true, nullable: true })
  trackId?: string | null;

  @IdField({
    description: 'The test plan whose comparison it rests on, if on one.',
    optional: true,
    nullable: true,
  })
  testPlanId?: string | null;

  @TextField({ description: 'Note.', minLength: 0, maxLength: 2_000, example: 'New seals.', optional: true })
  note?: string;
}

export class SetupDto {
  @IdField({ description: 'The set-up.' })
  id: string;

  @IdField({ description: 'The bike.' })
  bikeId: string;

  @NumberField({
    description: 'Counts the set-ups of the bike.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 1e9,
    example: 3,
  })
  revision: number;

  @IdField({ description: 'The set-up before; null for the first.', nullable: true })
  previousId: string | null;

  @PartField({ description: 'The fork.', type: () => EndSetupDto })
  fork: EndSetupDto;

  @PartField({
    description: 'The shock; null for a bike without one.',
    type: () => EndSetupDto,
    nullable: true,
  })
  shock: EndSetupDto | null;

  @NumberField({
    description: 'Altitude where the pressures were pumped; null: at the track on the day.',
    unit: 'm',
    minimum: -400,
    maximum: 5_000,
    example: 420,
    nullable: true,
  })
  filledAltitudeM: number | null;

  @NumberField({
    description: 'Air temperature where the pressures were pumped.',
    unit: '°C',
    minimum: -40,
    maximum: 55,
    example: 21,
    nullable: true,
  })
  filledTemperatureC: number | null;

  @TextField({ description: 'Note.', minLength: 0, maxLength: 2_000, example: 'New seals.' })
  note: string;

  @MomentField({ description: 'When it was made.', example: '2026-05-09T10:30:00Z' })
  createdAt: string;

  @IdField({ description: 'The account that made it.' })
  createdBy: string;
}

export class SetupPageDto extends pageOf(SetupDto) {}

export class SetupListQuery extends PageQuery {
  @IdField({ description: 'Only set-ups of this bike.', optional: true })
  bikeId?: string;
}

export class RestoreInputDto {
  @TextField({ description: 'Why it is taken back.', maxLength: 1_000, example: 'Too harsh on the roots.' })
  reason: string;
}
