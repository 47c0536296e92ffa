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
  TextsField,
} from '../../platform/http/fields.js';
import { CONDITIONS, type Condition } from '../sessions/conditions.js';
import { EvidenceDto, HitForecastDto } from '../demand/demand.dto.js';

const per = { unit: '%', minimum: 0, maximum: 100 };
const mm = { unit: 'mm', minimum: -300, maximum: 300 };
const height = { unit: 'm', minimum: 0, maximum: 100 };
const count = { unit: '1', integer: true, minimum: 0, maximum: 1e9 };

/** A set-up of one end with what is predicted of it on this track. */
export class EvaluatedFillDto {
  @NumberField({
    description: 'Air pressure at the track, gauge.',
    unit: 'psi',
    minimum: 0,
    maximum: 600,
    example: 68,
  })
  pressurePsi: number;

  @NumberField({ ...count, description: 'Volume spacers.', example: 3 })
  spacers: number;

  @NumberField({ ...per, description: 'Sag, of the stroke.', example: 18.1 })
  sagPct: number;

  @NumberField({ ...mm, description: 'Sag.', example: 30.8 })
  sagMm: number;

  @NumberField({ ...mm, description: 'Travel used by the median run.', example: 132 })
  medianTravelMm: number;

  @NumberField({ ...mm, description: 'Travel used by the 95th-percentile run.', example: 161 })
  travel95Mm: number;

  @NumberField({ ...mm, description: 'Travel left by the 95th-percentile run.', example: 9 })
  reserve95Mm: number;

  @NumberField({ ...per, description: 'Probability that a run bottoms out.', example: 4 })
  riskPct: number;

  @NumberField({
    ...height,
    description:
      'Hit height at which it just bottoms out; null: none within range, or it bottoms under the load alone (then the risk is 100 %).',
    example: 0.72,
    nullable: true,
  })
  bottomingHeightM: number | null;
}

export class AlternativeDto {
  @ChoiceField({
    description: 'In which way it differs.',
    choices: ['softer', 'firmer', 'fewer spacers', 'more spacers'],
  })
  kind: 'softer' | 'firmer' | 'fewer spacers' | 'more spacers';

  @PartField({ description: 'The set-up.', type: () => EvaluatedFillDto })
  fill: EvaluatedFillDto;

  @TextsField({
    description: 'Demands that it does not meet.',
    maxItems: 5,
    maxLength: 40,
    example: ['risk'],
  })
  breaks: string[];
}

export class AssumedInputDto {
  @ChoiceField({ description: 'Whose figure it is.', choices: ['spring unit', 'bike', 'rider'] })
  of: 'spring unit' | 'bike' | 'rider';

  @IdField({ description: 'The unit, bike or rider: where to change it.' })
  id: string;

  @TextField({ description: 'Field with its unit.', maxLength: 60, example: 'negativeVolumeMl' })
  field: string;

  @NumberField({
    description: 'The assumed value, in the unit of the field.',
    unit: '1',
    minimum: -1e9,
    maximum: 1e9,
    example: 31.7,
  })
  value: number;
}

export class EndBaselineDto {
  @ChoiceField({
    description: 'Whether a set-up is recommended.',
    choices: ['recommended', 'not feasible', 'no limits'],
  })
  status: 'recommended' | 'not feasible' | 'no limits';

  @TextField({ description: 'The answer in a sentence.', maxLength: 1_000, example: '68 psi and 3 spacers.' })
  message: string;

  @TextsField({
    description: 'Why.',
    maxItems: 20,
    maxLength: 1_000,
    example: ['12 candidates met every demand.'],
  })
  reasons: string[];

  @NumberField({ description: 'Stroke of the unit.', unit: 'mm', minimum: 20, maximum: 300, example: 170 })
  strokeMm: number;

  @NumberField({
    description: 'Travel at which the bumper begins.',
    unit: 'mm',
    minimum: 0,
    maximum: 300,
    example: 162,
  })
  bumperStartMm: number;

  @PartField({ description: 'The forecast of hits.', type: () => HitForecastDto })
  forecast: HitForecastDto;

  @PartField({ description: 'What the forecast rests on.', type: () => EvidenceDto })
  evidence: EvidenceDto;

  @PartField({ description: 'The set-up now; null for none.', type: () => EvaluatedFillDto, nullable: true })
  current: EvaluatedFillDto | null;

  @PartField({
    description: 'The recommended set-up; null where there is none.',
    type: () => EvaluatedFillDto,
    nullable: true,
  })
  recommended: EvaluatedFillDto | null;

  @PartField({
    description: 'Where nothing is feasible: what would come nearest.',
    type: () => EvaluatedFillDto,
    nullable: true,
  })
  nearest: EvaluatedFillDto | null;

  @TextsField({ description: 'Demands that cannot be met.', maxItems: 5, maxLength: 40, example: [] })
  unmet: string[];

  @PartsField({
    description: 'Set-ups to ride one after another on the way; the last is the recommended one.',
    type: () => EvaluatedFillDto,
    maxItems: 50,
  })
  steps: EvaluatedFillDto[];

  @PartsField({
    description: 'Neighbours of the recommended set-up.',
    type: () => AlternativeDto,
    maxItems: 4,
  })
  alternatives: AlternativeDto[];

  @ChoiceField({
    description: 'What the changed spring rate asks of the rebound.',
    choices: ['leave', 'try slower', 'try faster'],
  })
  rebound: 'leave' | 'try slower' | 'try faster';

  @PartsField({
    description: 'Every assumed figure behind the answer.',
    type: () => AssumedInputDto,
    maxItems: 40,
  })
  assumed: AssumedInputDto[];
}

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
    description: 'Changes with anything the answer depends on; the ETag.',
    example: '5d41402abc4b2a76',
  })
  version: string;
}

export class BaselineListDto {
  @PartsField({ description: 'One for each bike that you may see.', type: () => BaselineDto, maxItems: 500 })
  items: BaselineDto[];

  @ApiProperty({
    type: 'string',
    description: 'Changes with anything the answers depend on; the ETag.',
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
