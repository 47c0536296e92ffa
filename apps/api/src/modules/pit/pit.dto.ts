import { PickType } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import {
  DayField,
  FlagField,
  IdField,
  MomentField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { BikeDto } from '../bikes/bikes.dto.js';
import { DecisionDto } from '../decisions/decisions.dto.js';
import { LONGEST_RUN_S } from '../runs/run-input.dto.js';
import { SetupDto } from '../setups/setups.dto.js';
import { PitEndDto } from './pit-end.dto.js';

const count = { unit: '1', integer: true, minimum: 0, maximum: 1e9 };

/** The last decision about a bike; without an outcome it is open: nobody has judged it yet. */
export class PitDecisionDto extends PickType(DecisionDto, [
  'id',
  'decidedAt',
  'reason',
  'toSetupId',
  'outcome',
] as const) {}

/** A test plan under way on a bike. */
export class PitPlanDto {
  @IdField({ description: 'The plan.' })
  id: string;

  @TextField({ description: 'Its name.', maxLength: 200, example: 'Does one spacer more help?' })
  name: string;

  @IdField({ description: 'The rider who rides it on this bike.' })
  riderId: string;

  @NumberField({ ...count, description: 'Counted runs ridden.', example: 4 })
  ridden: number;

  @NumberField({ ...count, description: 'Counted runs to come.', example: 4 })
  left: number;
}

/** Work under way on a bike. */
export class PitWorkDto {
  @IdField({ description: 'The work order.' })
  id: string;

  @NumberField({ ...count, description: 'Steps done.', example: 2 })
  done: number;

  @NumberField({ ...count, description: 'All steps.', example: 8 })
  all: number;
}

/** The newest run on a bike, a spoilt one too. */
export class PitRunDto {
  @IdField({ description: 'The run.' })
  id: string;

  @IdField({ description: 'Its track.' })
  trackId: string;

  @TextField({ description: 'The name of its track.', maxLength: 80, example: 'Quarry Stairs' })
  trackName: string;

  @DayField({ description: 'Its day.', example: '2026-05-09' })
  day: string;

  @MomentField({ description: 'When it was logged.', example: '2026-05-09T10:30:00Z' })
  loggedAt: string;

  @NumberField({
    description: 'Its time; null: not timed.',
    unit: 's',
    minimum: 0,
    maximum: LONGEST_RUN_S,
    example: 187.4,
    nullable: true,
  })
  timeS: number | null;

  @FlagField({ description: 'Whether it is void.', example: false })
  isVoid: boolean;

  @IdField({ description: 'The set-up it was ridden on.' })
  setupId: string;
}

export class PitBikeDto extends PickType(BikeDto, ['name', 'category', 'riderId'] as const) {
  @IdField({ description: 'The bike.' })
  bikeId: string;

  @TextField({ description: 'The name of its rider.', maxLength: 80, example: 'Rider A' })
  riderName: string;

  @PartField({
    description: 'What is in it now; null: nobody has set it up.',
    type: () => SetupDto,
    nullable: true,
  })
  setup: SetupDto | null;

  @PartField({
    description: 'What was in it before; null before the second set-up.',
    type: () => SetupDto,
    nullable: true,
  })
  previousSetup: SetupDto | null;

  @PartField({ description: 'The fork.', type: () => PitEndDto })
  fork: PitEndDto;

  @PartField({
    description: 'The shock; null for a bike without one.',
    type: () => PitEndDto,
    nullable: true,
  })
  shock: PitEndDto | null;

  @PartField({
    description: 'The last decision; null before the first.',
    type: () => PitDecisionDto,
    nullable: true,
  })
  decision: PitDecisionDto | null;

  @PartsField({ description: 'Its open test plans.', type: () => PitPlanDto, maxItems: 1_000 })
  plans: PitPlanDto[];

  @PartsField({
    description: 'Its work orders that wait to be done.',
    type: () => PitWorkDto,
    maxItems: 1_000,
  })
  work: PitWorkDto[];

  @PartField({ description: 'Its newest run; null before the first.', type: () => PitRunDto, nullable: true })
  lastRun: PitRunDto | null;
}

/** The air that the pressures of today are for. */
export class PitAirDto {
  @IdField({ description: 'The track.' })
  trackId: string;

  @TextField({ description: 'Its name.', maxLength: 80, example: 'Quarry Stairs' })
  trackName: string;

  @NumberField({ description: 'Its altitude.', unit: 'm', minimum: -400, maximum: 5_000, example: 1_450 })
  altitudeM: number;

  @NumberField({ description: 'Air temperature.', unit: '°C', minimum: -100, maximum: 100, example: 6 })
  airTemperatureC: number;

  @FlagField({
    description: "Whether the temperature is the standard atmosphere's at the altitude, to the whole degree.",
    example: true,
  })
  isTemperatureAssumed: boolean;
}

export class PitDto {
  @PartField({
    description: 'Today; null: no track is named and none was ridden yet.',
    type: () => PitAirDto,
    nullable: true,
  })
  air: PitAirDto | null;

  @PartsField({ description: 'Every bike of the team.', type: () => PitBikeDto, maxItems: 100_000 })
  bikes: PitBikeDto[];
}

export class PitQuery {
  @IdField({
    description: "The track of the day; without it, that of the team's newest run.",
    optional: true,
  })
  trackId?: string;

  @Type(() => Number)
  @NumberField({
    description: "Air temperature there; without it, the standard atmosphere's.",
    unit: '°C',
    minimum: -40,
    maximum: 55,
    example: 6,
    optional: true,
  })
  airTemperatureC?: number;
}
