import { SURPRISING, type DemandFit } from '@loamledger/evidence';
import { ApiProperty } from '@nestjs/swagger';
import {
  ChoiceField,
  DayField,
  FlagField,
  IdField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { CONDITIONS, type Condition } from '../sessions/conditions.js';
import { ENDS, type End } from '../suspension/end-inputs.js';

const RIDER_ON_TRACK_SOURCES = [
  'told by runs',
  'mostly prior',
  'given',
] as const satisfies readonly DemandFit['riderOnTrackSd'][];
const height = { unit: 'm', minimum: 0, maximum: 100 };
const count = { unit: '1', integer: true, minimum: 0, maximum: 1e9 };
const logSd = { unit: '1, natural logarithm', minimum: 0, maximum: 20 };

/** The forecast of log hit heights, natural logarithm of metres, that later runs are held against. */
export class ExpectedHitDto {
  @NumberField({
    description: 'Mean of the logarithm of the hit height.',
    unit: '1, natural logarithm of metres',
    minimum: -20,
    maximum: 5,
    example: -0.8,
  })
  logMean: number;

  @NumberField({ ...logSd, description: 'Standard deviation of what all these runs share.', example: 0.1 })
  levelSd: number;

  @NumberField({ ...logSd, description: 'Standard deviation between these runs.', example: 0.2 })
  runSd: number;
}

/** How hard the rider's next run here is expected to hit this end. */
export class HitForecastDto {
  @NumberField({ ...height, description: '5th percentile of the hit height.', example: 0.28 })
  p05M: number;

  @NumberField({ ...height, description: 'Median of the hit height.', example: 0.45 })
  medianM: number;

  @NumberField({ ...height, description: '95th percentile of the hit height.', example: 0.7 })
  p95M: number;

  @PartField({ description: 'The same as mean and spread of the logarithm.', type: () => ExpectedHitDto })
  hit: ExpectedHitDto;
}

export class EvidenceDto {
  @ChoiceField({
    description: 'What the forecast rests on.',
    choices: ['rider here', 'team here', 'rider elsewhere', 'physics only'],
  })
  level: 'rider here' | 'team here' | 'rider elsewhere' | 'physics only';

  @TextField({
    description: 'In a sentence.',
    maxLength: 500,
    example: "This rider's own runs on this track.",
  })
  message: string;

  @FlagField({ description: "Whether the track is known only as 'at least'.", example: false })
  lowerBoundOnly: boolean;

  @NumberField({ ...count, description: 'Readings of this rider here.', example: 12 })
  ownHere: number;

  @NumberField({ ...count, description: 'Readings of the team here, this rider included.', example: 42 })
  teamHere: number;

  @NumberField({ ...count, description: 'Readings of this rider on other tracks.', example: 30 })
  ownElsewhere: number;

  @NumberField({ ...count, description: 'Readings here that tell the height.', example: 36 })
  exactHere: number;

  @NumberField({ ...count, description: "Readings here that say 'at least'.", example: 5 })
  atLeastHere: number;

  @NumberField({ ...count, description: "Readings here that say 'at most'.", example: 1 })
  atMostHere: number;

  @NumberField({ ...count, description: 'All readings of the team.', example: 180 })
  total: number;
}

/** One ring reading on a track, as a hit height. */
export class DemandReadingDto {
  @IdField({ description: 'The run.' })
  runId: string;

  @IdField({ description: 'The rider.' })
  riderId: string;

  @IdField({ description: 'The bike.' })
  bikeId: string;

  @DayField({ description: 'The day.', example: '2026-05-09' })
  day: string;

  @ChoiceField({ description: 'State of the ground.', choices: CONDITIONS })
  condition: Condition;

  @ChoiceField({
    description: 'Whether it tells the height, or only a bound of it.',
    choices: ['exact', 'at-least', 'at-most'],
  })
  kind: 'exact' | 'at-least' | 'at-most';

  @NumberField({ ...height, description: 'The hit height, or its bound.', example: 0.47 })
  heightM: number;

  @NumberField({ ...logSd, description: 'Standard uncertainty of its logarithm.', example: 0.05 })
  logSd: number;

  @FlagField({ description: 'Whether the run is void.', example: false })
  voided: boolean;

  @FlagField({ description: 'Whether the model counts the reading.', example: true })
  counts: boolean;

  @NumberField({
    unit: '1',
    minimum: 0,
    maximum: 1,
    nullable: true,
    description:
      'How probable it was. One that tells the height: two-sided chance of one as far out, foretold from the others. A bound: the chance that a run here would have met it. null where the model does not count it.',
    example: 0.4,
  })
  chance: number | null;

  @NumberField({
    unit: '1, natural logarithm',
    minimum: -20,
    maximum: 20,
    nullable: true,
    description:
      "How far it moves the logarithm of the rider's level here. null for a bound, and where the model does not count it.",
    example: 0.02,
  })
  pull: number | null;

  @FlagField({
    description: `Whether it was so improbable (chance below ${SURPRISING}) that ring, tape and notebook deserve a second look.`,
    example: false,
  })
  surprising: boolean;
}

export class RiderForecastDto {
  @IdField({ description: 'The rider.' })
  riderId: string;

  @PartField({ description: 'The forecast of hits.', type: () => HitForecastDto })
  forecast: HitForecastDto;

  @PartField({ description: 'What it rests on.', type: () => EvidenceDto })
  evidence: EvidenceDto;
}

export class TrackDemandDto {
  @IdField({ description: 'The track.' })
  trackId: string;

  @ChoiceField({ description: 'Which end of the bikes.', choices: ENDS })
  end: End;

  @ChoiceField({ description: 'The ground that the forecasts are for.', choices: CONDITIONS })
  condition: Condition;

  @PartsField({
    description: 'Every reading on the track, oldest first.',
    type: () => DemandReadingDto,
    maxItems: 100_000,
  })
  readings: DemandReadingDto[];

  @PartsField({
    description: 'The forecast for each rider you may see.',
    type: () => RiderForecastDto,
    maxItems: 500,
  })
  riders: RiderForecastDto[];

  @PartField({
    description: 'The forecast for a rider of whom nothing is known.',
    type: () => HitForecastDto,
  })
  anyRider: HitForecastDto;

  @NumberField({
    ...logSd,
    description: 'Scatter between runs of a rider on a track: posterior mean.',
    example: 0.2,
  })
  runSd: number;

  @NumberField({ ...logSd, description: 'Spread between tracks: posterior mean.', example: 0.4 })
  trackSd: number;

  @NumberField({ ...logSd, description: 'Spread between riders: posterior mean.', example: 0.15 })
  riderSd: number;

  @NumberField({
    ...logSd,
    description: 'How differently one track suits single riders: posterior mean.',
    example: 0.12,
  })
  riderOnTrackSd: number;

  @ChoiceField({
    description: "Whether the team's runs tell riderOnTrackSd, or it is mostly what was believed beforehand.",
    choices: RIDER_ON_TRACK_SOURCES,
  })
  riderOnTrackSdSource: DemandFit['riderOnTrackSd'];

  @TextField({ description: 'How the fit went.', maxLength: 500, example: 'Fitted to 180 readings.' })
  message: string;

  @TextField({ description: 'Version of the demand model.', maxLength: 20, example: '1.0.0' })
  modelVersion: string;

  @ApiProperty({
    type: 'string',
    description: "The team's evidence version; the ETag begins with it.",
    example: '214',
  })
  version: string;
}

export class DemandQuery {
  @ChoiceField({ description: "Which end of the bikes; 'fork' if left out.", choices: ENDS, optional: true })
  end?: End;

  @ChoiceField({
    description: "The ground that the forecasts are for; 'dry' if left out.",
    choices: CONDITIONS,
    optional: true,
  })
  condition?: Condition;
}
