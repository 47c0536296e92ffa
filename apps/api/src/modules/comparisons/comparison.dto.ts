import type { Comparison, ModeratedVariance } from '@loamledger/evidence';
import {
  ChoiceField,
  FlagField,
  IdField,
  NumberField,
  PartField,
  PartsField,
  TextsField,
} from '../../platform/http/fields.js';
import { TRENDS } from '../test-plans/test-plan-input.dto.js';
import { ArmComparisonDto, ComparedDto } from './comparison-arm.dto.js';
import { SectionComparisonDto } from './section-comparison.dto.js';

const SOURCES = [
  'this session',
  'moderated by history',
  'history alone',
] as const satisfies readonly ModeratedVariance['source'][];
const count = { unit: '1', integer: true, minimum: 0, maximum: 1e5 };
const seconds = { unit: 's', minimum: 0, maximum: 1e5, nullable: true };

export class RunCountsDto {
  @NumberField({ ...count, description: 'Runs, void ones included.', example: 9 })
  runs: number;

  @NumberField({ ...count, description: 'Void runs.', example: 1 })
  voided: number;

  @NumberField({ ...count, description: 'Runs that count but have no time.', example: 0 })
  untimed: number;

  @NumberField({ ...count, description: 'Runs that count and have a time.', example: 8 })
  timed: number;
}

/** The scatter between runs that the verdicts rest on. */
export class ScatterDto {
  @NumberField({
    description: 'Standard deviation.',
    unit: '% of time',
    minimum: 0,
    maximum: 1e3,
    example: 1.2,
  })
  scatterPct: number;

  @NumberField({ description: 'Degrees of freedom.', unit: '1', minimum: 0, maximum: 1e6, example: 11.4 })
  df: number;

  @ChoiceField({ description: 'Where it is from.', choices: SOURCES })
  source: ModeratedVariance['source'];
}

/** Void runs of one arm. */
export class VoidCountDto extends ComparedDto {
  @NumberField({ ...count, description: 'Void runs.', example: 1 })
  voided: number;

  @NumberField({ ...count, description: 'Runs, void ones included.', example: 5 })
  ridden: number;

  @NumberField({
    description:
      'How likely such a split between it and the current one is by chance; null for the current one.',
    unit: '1',
    minimum: 0,
    maximum: 1,
    example: 1,
    nullable: true,
  })
  p: number | null;
}

/** One run in the picture of a comparison. */
export class RunPointDto extends ComparedDto {
  @IdField({ description: 'The run.' })
  runId: string;

  @IdField({ description: 'The rider.' })
  riderId: string;

  @IdField({ description: 'The session.' })
  sessionId: string;

  @NumberField({ ...count, description: "Place in the rider's session.", example: 3 })
  position: number;

  @FlagField({ description: 'Whether it is void.', example: false })
  voided: boolean;

  @NumberField({ ...seconds, description: 'Time; null: not timed.', example: 187.4 })
  timeS: number | null;

  @NumberField({
    ...seconds,
    description: 'Time fitted to its arm, place, rider and session.',
    example: 186.9,
  })
  fittedS: number | null;

  @NumberField({
    ...seconds,
    description: 'The trend: time that the current one would have had here.',
    example: 188.2,
  })
  trendS: number | null;
}

export class ComparisonDto {
  @IdField({ description: 'The plan; null for set-ups chosen afterwards.', nullable: true })
  planId: string | null;

  @NumberField({
    description: 'Number of the look at the plan; null for a single look.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 1e3,
    example: 2,
    nullable: true,
  })
  look: number | null;

  @NumberField({
    description: 'Looks that were agreed for the plan; null for a single look.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 1e3,
    example: 4,
    nullable: true,
  })
  ofLooks: number | null;

  @NumberField({
    description:
      'Error rate of this look: what P values are held against, so that all looks together keep 5 %.',
    unit: '%',
    minimum: 0,
    maximum: 5,
    example: 5,
  })
  errorRatePct: number;

  @NumberField({
    ...count,
    description: 'Comparisons of ratings, set-ups times aspects, that share the error rate of feel.',
    example: 12,
  })
  feelComparisons: number;

  @NumberField({
    description: 'Error rate of feel at this look: what adjusted P values of ratings are held against.',
    unit: '%',
    minimum: 0,
    maximum: 5,
    example: 5,
  })
  feelErrorRatePct: number;

  @NumberField({
    description: 'Difference of time worth acting on.',
    unit: '% of time',
    minimum: 0.1,
    maximum: 20,
    example: 1,
  })
  marginPct: number;

  @ChoiceField({
    description: 'Trend over the session that is taken out.',
    choices: TRENDS,
    example: 'linear',
  })
  trend: (typeof TRENDS)[number];

  @ChoiceField({
    description: 'Whether there was anything to compare.',
    choices: ['compared', 'nothing to compare'],
  })
  status: Comparison['status'];

  @TextsField({
    description: 'What the reader has to know about all of it.',
    maxItems: 20,
    maxLength: 500,
    example: ['One rider: this holds for this rider, this track and these days.'],
  })
  sentences: string[];

  @PartField({ description: 'Runs by what they are good for.', type: () => RunCountsDto })
  counts: RunCountsDto;

  @PartField({
    description: 'The scatter between runs; null: not known.',
    type: () => ScatterDto,
    nullable: true,
  })
  scatter: ScatterDto | null;

  @NumberField({
    description: 'Change of time from the first place to the last by the linear trend; null without one.',
    unit: '% of time',
    minimum: -100,
    maximum: 1e6,
    example: -1.4,
    nullable: true,
  })
  trendOverSessionPct: number | null;

  @PartField({ description: 'What the others are compared with.', type: () => ComparedDto })
  current: ComparedDto;

  @PartsField({ description: 'The others.', type: () => ArmComparisonDto, maxItems: 100 })
  arms: ArmComparisonDto[];

  @PartsField({
    description:
      'The same for each section of the track that has times, in riding order. Where on the track a difference lies is a second question: the verdict on the whole run does not wait for it.',
    type: () => SectionComparisonDto,
    maxItems: 100,
  })
  sections: SectionComparisonDto[];

  @PartsField({ description: 'Void runs of each.', type: () => VoidCountDto, maxItems: 100 })
  voids: VoidCountDto[];

  @PartsField({
    description: 'Every run in the order of logging; a rider sees their own.',
    type: () => RunPointDto,
    maxItems: 10_000,
  })
  points: RunPointDto[];
}
