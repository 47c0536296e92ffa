import { answerOf } from '../../platform/http/answer.js';
import {
  ChoiceField,
  IdField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { pageOf } from '../../platform/http/page.js';
import { VersionField } from '../../platform/http/version-field.js';
import { SOURCES, type Source } from '../../platform/database/source.js';
import { BIKE_CATEGORIES, type BikeCategory } from './bike.entity.js';

export class LeverageRowDto {
  @NumberField({ description: 'Shock travel.', unit: 'mm', minimum: 0, maximum: 150, example: 0 })
  shockTravelMm: number;

  @NumberField({
    description: 'Leverage ratio there: wheel travel per shock travel.',
    unit: '1',
    minimum: 0.5,
    maximum: 8,
    example: 3.05,
  })
  leverageRatio: number;
}

const source = (of: string) =>
  ChoiceField({
    description: `Where ${of} comes from; 'assumed' if left out.`,
    choices: SOURCES,
    optional: true,
  });

/** Where each figure comes from. */
export class BikeSourcesDto {
  @source('the mass') massKg?: Source;
  @source('the front unsprung mass') frontUnsprungMassKg?: Source;
  @source('the rear unsprung mass') rearUnsprungMassKg?: Source;
  @source('the head angle') headAngleDeg?: Source;
  @source('the load share') frontLoadSharePct?: Source;
  @source('the leverage table') leverageTable?: Source;
}

export class BikeInputDto {
  @TextField({ description: 'Name.', maxLength: 80, example: 'Rider A, enduro' })
  name: string;

  @IdField({ description: 'Whose bike it is.' })
  riderId: string;

  @ChoiceField({ description: 'What it is built for.', choices: BIKE_CATEGORIES })
  category: BikeCategory;

  @NumberField({ description: 'Mass of the bike.', unit: 'kg', minimum: 5, maximum: 40, example: 15.5 })
  massKg: number;

  @NumberField({
    description: 'Front mass that does not stand on the spring: wheel, brake, lower legs.',
    unit: 'kg',
    minimum: 0.5,
    maximum: 10,
    example: 4.3,
  })
  frontUnsprungMassKg: number;

  @NumberField({
    description: 'Rear mass that does not stand on the spring.',
    unit: 'kg',
    minimum: 0.5,
    maximum: 12,
    example: 5,
  })
  rearUnsprungMassKg: number;

  @NumberField({ description: 'Head angle.', unit: '°', minimum: 55, maximum: 75, example: 64 })
  headAngleDeg: number;

  @NumberField({ description: 'Wheelbase.', unit: 'mm', minimum: 900, maximum: 1_500, example: 1_250 })
  wheelbaseMm: number;

  @NumberField({
    description: 'Front wheel travel as the maker of the frame states it.',
    unit: 'mm',
    minimum: 60,
    maximum: 260,
    example: 170,
  })
  frontWheelTravelMm: number;

  @NumberField({
    description: 'Rear wheel travel as the maker of the frame states it; 0 without a shock.',
    unit: 'mm',
    minimum: 0,
    maximum: 260,
    example: 165,
  })
  rearWheelTravelMm: number;

  @NumberField({
    description: 'Share of rider and bike on the front wheel in the attack position; null: assumed 40 %.',
    unit: '%',
    minimum: 20,
    maximum: 70,
    example: 42,
    optional: true,
    nullable: true,
  })
  frontLoadSharePct?: number | null;

  @NumberField({
    description: 'Height of the centre of mass of rider and bike above the ground; null: assumed.',
    unit: 'mm',
    minimum: 600,
    maximum: 1_600,
    example: 1_050,
    optional: true,
    nullable: true,
  })
  centreOfMassHeightMm?: number | null;

  @NumberField({
    description: 'Distance of the centre of mass ahead of the rear contact; null: assumed.',
    unit: 'mm',
    minimum: 200,
    maximum: 1_200,
    example: 520,
    optional: true,
    nullable: true,
  })
  centreOfMassToRearMm?: number | null;

  @PartsField({
    description:
      'Leverage ratio over shock travel, from 0 to the stroke of the shock; empty without a shock.',
    type: () => LeverageRowDto,
    maxItems: 100,
    optional: true,
  })
  leverageTable?: LeverageRowDto[];

  @IdField({ description: 'The fork.' })
  forkUnitId: string;

  @IdField({ description: 'The shock; null for none.', optional: true, nullable: true })
  shockUnitId?: string | null;

  @PartField({ description: 'Where each figure comes from.', type: () => BikeSourcesDto, optional: true })
  sources?: BikeSourcesDto;
}

export class BikeDto extends answerOf(BikeInputDto) {
  @IdField({ description: 'The bike.' })
  id: string;

  @VersionField()
  version: number;
}

export class BikePageDto extends pageOf(BikeDto) {}
