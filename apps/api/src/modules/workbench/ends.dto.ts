import { ApiProperty } from '@nestjs/swagger';
import {
  IdField,
  NumberField,
  PartField,
  PartsField,
  TextField,
  TextsField,
} from '../../platform/http/fields.js';
import { AssumedInputDto } from '../baselines/end-baseline.dto.js';
import { LeverageRowDto } from '../bikes/bikes.dto.js';
import { EvidenceDto, HitForecastDto } from '../demand/demand.dto.js';
import { EndWishDto } from '../riders/riders.dto.js';
import { BrakingFiguresDto } from '../spring/braking-figures.dto.js';
import { CompleteEndUncertaintyDto, FillDto } from '../spring/end.dto.js';
import { CompleteUnitFiguresDto, CompleteUnitSourcesDto } from '../spring-units/unit-figures.dto.js';

const limit = { unit: 'psi', minimum: 1, maximum: 600, nullable: true };

/** What may go into the unit; null: not entered. */
export class EndLimitsDto {
  @NumberField({ ...limit, description: 'Least air pressure; null: not entered.', example: 40 })
  minPressurePsi: number | null;

  @NumberField({ ...limit, description: 'Highest air pressure; null: not entered.', example: 120 })
  maxPressurePsi: number | null;

  @NumberField({
    description: 'Most spacers; null: not entered.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 30,
    example: 5,
    nullable: true,
  })
  maxSpacers: number | null;
}

/** What the rider wants of this end. */
export class EndWishesDto extends EndWishDto {
  @NumberField({
    description: 'Accepted probability that a run bottoms out.',
    unit: '%',
    minimum: 0.1,
    maximum: 50,
    example: 5,
  })
  acceptedRiskPct: number;
}

export class RiskPointDto {
  @NumberField({ description: 'Hit height.', unit: 'm', minimum: 0, maximum: 1e6, example: 0.7 })
  heightM: number;

  @NumberField({
    description: 'Probability that the biggest hit of a run is higher.',
    unit: '%',
    minimum: 0,
    maximum: 100,
    example: 5,
  })
  riskPct: number;
}

/** Everything that the spring engine and a person need to try changes at one end of a bike. */
export class BikeEndDto {
  @IdField({ description: 'The unit.' })
  unitId: string;

  @TextField({ description: 'Name of the unit.', maxLength: 80, example: 'Fork of bike A' })
  unitName: string;

  @PartField({ description: 'Figures of the unit.', type: () => CompleteUnitFiguresDto })
  unit: CompleteUnitFiguresDto;

  @PartField({ description: 'Where each figure comes from.', type: () => CompleteUnitSourcesDto })
  sources: CompleteUnitSourcesDto;

  @PartField({ description: 'What may go into it.', type: () => EndLimitsDto })
  limits: EndLimitsDto;

  @NumberField({
    description: 'Spacers of this size in stock.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1_000,
    example: 4,
  })
  spacersInStock: number;

  @PartField({
    description:
      "What is in it, as a gauge shows it in the track's air; null where no set-up says so for this unit.",
    type: () => FillDto,
    nullable: true,
  })
  fill: FillDto | null;

  @NumberField({
    description: 'Absolute pressure of the air around: at the track, or at sea level without one.',
    unit: 'hPa',
    minimum: 300,
    maximum: 1_200,
    example: 851,
  })
  ambientPressureHpa: number;

  @NumberField({
    description: 'Temperature of the air around.',
    unit: '°C',
    minimum: -60,
    maximum: 60,
    example: 5.6,
  })
  airTemperatureC: number;

  @NumberField({
    description: 'Mass that stands on the spring.',
    unit: 'kg',
    minimum: 0,
    maximum: 300,
    example: 35.5,
  })
  sprungMassKg: number;

  @NumberField({
    description: 'Head angle; null for a shock.',
    unit: '°',
    minimum: 55,
    maximum: 75,
    example: 64,
    nullable: true,
  })
  headAngleDeg: number | null;

  @PartsField({
    description: 'Leverage ratio over shock travel; empty for a fork.',
    type: () => LeverageRowDto,
    maxItems: 100,
  })
  leverageTable: LeverageRowDto[];

  @PartField({
    description: 'Standard uncertainties for intervals; larger where a figure is assumed.',
    type: () => CompleteEndUncertaintyDto,
  })
  uncertainty: CompleteEndUncertaintyDto;

  @PartField({
    description: 'Forecast of hits on the track; null without one.',
    type: () => HitForecastDto,
    nullable: true,
  })
  forecast: HitForecastDto | null;

  @PartsField({
    description:
      'Risk that the biggest hit of a run on the track is higher, at heights evenly spaced by ratio; empty without a track.',
    type: () => RiskPointDto,
    maxItems: 200,
  })
  riskCurve: RiskPointDto[];

  @PartField({
    description: 'What the forecast rests on; null without a track.',
    type: () => EvidenceDto,
    nullable: true,
  })
  evidence: EvidenceDto | null;

  @PartField({ description: 'What the rider wants of this end.', type: () => EndWishesDto })
  wishes: EndWishesDto;

  @PartsField({ description: 'Every assumed figure.', type: () => AssumedInputDto, maxItems: 40 })
  assumed: AssumedInputDto[];
}

/** What braking needs to know of the bike under its rider. */
export class BikeBrakingDto extends BrakingFiguresDto {
  @TextsField({
    description: 'Those of these figures that are assumed.',
    maxItems: 5,
    maxLength: 60,
    example: ['centreOfMassHeightMm'],
  })
  assumed: string[];
}

export class BikeEndsDto {
  @IdField({ description: 'The bike.' })
  bikeId: string;

  @IdField({ description: 'Its rider.' })
  riderId: string;

  @IdField({ description: 'The set-up in the bike; null for none.', nullable: true })
  setupId: string | null;

  @IdField({ description: 'The track that was asked for; null for none.', nullable: true })
  trackId: string | null;

  @PartField({ description: 'The fork.', type: () => BikeEndDto })
  fork: BikeEndDto;

  @PartField({
    description: 'The shock; null for a bike without one.',
    type: () => BikeEndDto,
    nullable: true,
  })
  shock: BikeEndDto | null;

  @PartField({ description: 'What braking needs to know.', type: () => BikeBrakingDto })
  braking: BikeBrakingDto;

  @TextField({ description: 'Version of the spring engine.', maxLength: 20, example: '1.0.0' })
  engineVersion: string;

  @ApiProperty({
    type: 'string',
    description: 'Changes with anything the answer depends on; the ETag begins with it.',
    example: '5d41402abc4b2a76',
  })
  version: string;
}

export class EndsQuery {
  @IdField({
    description: 'The track whose air and demand are meant; sea level if left out.',
    optional: true,
  })
  trackId?: string;
}
