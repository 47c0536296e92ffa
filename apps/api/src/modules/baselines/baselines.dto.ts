import { ApiProperty } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import {
  ChoiceField,
  FlagField,
  IdField,
  IdsField,
  MomentField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { CONDITIONS, type Condition } from '../sessions/conditions.js';
import { SetupDto } from '../setups/setups.dto.js';
import { EndBaselineDto } from './end-baseline.dto.js';

const count = { unit: '1', integer: true, minimum: 0, maximum: 1e9 };

/** The ground and the air that a baseline is for. */
export class VenueDto {
  @ChoiceField({ description: 'State of the ground.', choices: CONDITIONS })
  condition: Condition;

  @NumberField({
    description: 'Air temperature.',
    unit: '°C',
    minimum: -100,
    maximum: 100,
    example: 5.6,
  })
  airTemperatureC: number;

  @FlagField({
    description: "Whether the temperature is the standard atmosphere's at the track's altitude.",
    example: true,
  })
  isTemperatureAssumed: boolean;

  @NumberField({
    description: 'Absolute air pressure.',
    unit: 'hPa',
    minimum: 100,
    maximum: 1_100,
    example: 851,
  })
  stationPressureHpa: number;

  @FlagField({
    description: "Whether the pressure is the standard atmosphere's at the track's altitude.",
    example: true,
  })
  isPressureAssumed: boolean;
}

export class BaselineDto {
  @IdField({ description: 'The baseline.' })
  id: string;

  @MomentField({ description: 'When it was computed.', example: '2026-05-09T10:30:00Z' })
  computedAt: string;

  @IdField({ description: 'The bike.' })
  bikeId: string;

  @IdField({ description: 'The rider.' })
  riderId: string;

  @IdField({ description: 'The track.' })
  trackId: string;

  @IdField({ description: 'The set-up that was in the bike; null for none.', nullable: true })
  setupId: string | null;

  @PartField({
    description: 'The ground and the air that it is for; null: stored before they were told apart.',
    type: () => VenueDto,
    nullable: true,
  })
  venue: VenueDto | null;

  @PartField({ description: 'The fork.', type: () => EndBaselineDto })
  fork: EndBaselineDto;

  @PartField({
    description: 'The shock; null for a bike without one.',
    type: () => EndBaselineDto,
    nullable: true,
  })
  shock: EndBaselineDto | null;

  @NumberField({ ...count, description: 'Runs of the team behind it.', example: 180 })
  runCount: number;

  @TextField({ description: 'Version of the spring engine.', maxLength: 20, example: '1.0.0' })
  engineVersion: string;

  @TextField({ description: 'Version of the demand model.', maxLength: 20, example: '1.0.0' })
  modelVersion: string;

  @NumberField({ ...count, description: "Version of the team's evidence.", example: 214 })
  evidenceVersion: number;

  @ApiProperty({
    type: 'string',
    description: 'Changes with anything the answer depends on; the ETag begins with it.',
    example: '5d41402abc4b2a76',
  })
  version: string;
}

export class BaselineListDto {
  @PartsField({ description: 'One for each bike that you may see.', type: () => BaselineDto, maxItems: 500 })
  items: BaselineDto[];

  @ApiProperty({
    type: 'string',
    description: 'Changes with anything the answers depend on; the ETag begins with it.',
    example: '5d41402abc4b2a76',
  })
  version: string;
}

export class BaselineListQuery {
  @IdField({ description: 'The track.' })
  trackId: string;

  @IdField({ description: 'Only for this bike.', optional: true })
  bikeId?: string;

  @ChoiceField({
    description: "The ground to be ridden; 'dry' if left out.",
    choices: CONDITIONS,
    optional: true,
  })
  condition?: Condition;

  @Type(() => Number)
  @NumberField({
    description: "Air temperature; that of the standard atmosphere at the track's altitude if left out.",
    unit: '°C',
    minimum: -40,
    maximum: 55,
    example: 6,
    optional: true,
  })
  airTemperatureC?: number;

  @Type(() => Number)
  @NumberField({
    description:
      'Absolute air pressure at the track; that of the standard atmosphere at its altitude if left out.',
    unit: 'hPa',
    minimum: 500,
    maximum: 1_085,
    example: 851,
    optional: true,
  })
  stationPressureHpa?: number;
}

/** The runs behind the baselines of one version of the evidence. */
export class BaselineRunsDto {
  @NumberField({ ...count, description: "Version of the team's evidence.", example: 214 })
  evidenceVersion: number;

  @IdsField({ description: 'Every run whose ring readings counted, oldest first.', maxItems: 1_000_000 })
  runIds: string[];
}

export class TakeBaselineDto {
  @TextField({ description: 'Why it is taken.', maxLength: 1_000, example: 'Race weekend.', optional: true })
  reason?: string;

  @FlagField({
    description: 'Whether to go the whole way at once; if false or left out, only the first step is taken.',
    example: false,
    optional: true,
  })
  wholeWay?: boolean;
}

export class BaselineToTakeDto {
  @IdField({ description: 'The baseline.' })
  baselineId: string;

  @FlagField({
    description: 'Whether to go the whole way at once; if false or left out, only the first step is taken.',
    example: false,
    optional: true,
  })
  wholeWay?: boolean;
}

export class TakeSeveralDto {
  @PartsField({
    description: 'The baselines, each of another bike.',
    type: () => BaselineToTakeDto,
    minItems: 1,
    maxItems: 50,
  })
  baselines: BaselineToTakeDto[];

  @TextField({
    description: 'Why they are taken.',
    maxLength: 1_000,
    example: 'Race weekend.',
    optional: true,
  })
  reason?: string;
}

export class TakenDto {
  @PartsField({
    description: 'The set-ups that were made, in the order of the baselines.',
    type: () => SetupDto,
    maxItems: 50,
  })
  items: SetupDto[];
}
