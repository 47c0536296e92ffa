import type { FeelComparison, Verdict } from '@loamledger/evidence';
import {
  ChoiceField,
  IdField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { ASPECTS, type Aspect } from './compute-comparison.js';

export const VERDICTS = [
  'faster',
  'slower',
  'no practical difference',
  'cannot tell yet',
  'no verdict',
] as const satisfies readonly Verdict[];

type RatingState = FeelComparison['rated'][number]['status'];

const RATING_STATES = [
  'compared',
  'no ratings',
  'all equal',
  'too few ratings',
] as const satisfies readonly RatingState[];

const count = { unit: '1', integer: true, minimum: 0, maximum: 1e5 };
const timeShare = { unit: '% of time', minimum: -100, maximum: 1e6, nullable: true };
const probability = { unit: '1', minimum: 0, maximum: 1, nullable: true };
const odds = { unit: '1', minimum: 0, maximum: 1e12, nullable: true };
const median = { unit: '1 (bad) to 5 (good)', minimum: 1, maximum: 5, nullable: true };

/** What is compared: an arm of a plan, or a set-up. */
export class ComparedDto {
  @TextField({
    description: 'Letter of the arm; null outside a plan.',
    maxLength: 1,
    example: 'B',
    nullable: true,
  })
  letter: string | null;

  @TextField({
    description: 'What is tried; null outside a plan.',
    maxLength: 100,
    example: 'One spacer more',
    nullable: true,
  })
  name: string | null;

  @IdField({ description: 'The set-up; null in a plan, where each bike has its own.', nullable: true })
  setupId: string | null;
}

/** How one aspect was rated, against the current one. */
export class RatingComparisonDto {
  @ChoiceField({ description: 'What was rated.', choices: ASPECTS })
  aspect: Aspect;

  @ChoiceField({ description: 'Whether it could be tested.', choices: RATING_STATES })
  status: RatingState;

  @TextField({
    description: 'The same in words.',
    maxLength: 500,
    example: 'The ratings do not tell the two apart (exact P 0.40).',
  })
  sentence: string;

  @NumberField({ ...count, description: 'Ratings of it.', example: 4 })
  ratings: number;

  @NumberField({ ...count, description: 'Ratings of the current one.', example: 4 })
  currentRatings: number;

  @NumberField({ ...median, description: 'Median rating of it.', example: 4 })
  median: number | null;

  @NumberField({ ...median, description: 'Median rating of the current one.', example: 3 })
  currentMedian: number | null;

  @NumberField({
    ...probability,
    description:
      'Chance that a rating of it is above one of the current one by the same rider; equal ones count half.',
    example: 0.75,
  })
  superiority: number | null;

  @NumberField({
    ...probability,
    description: 'Two-sided exact P value of this comparison alone.',
    example: 0.4,
  })
  p: number | null;

  @NumberField({
    ...probability,
    description: 'The smallest P value that this many ratings can give alone.',
    example: 0.029,
  })
  smallestP: number | null;

  @NumberField({
    ...probability,
    description:
      'The P value adjusted for all comparisons of ratings (Holm): it is held against the error rate of feel.',
    example: 1,
  })
  pAmong: number | null;

  @NumberField({
    ...probability,
    description: 'The smallest adjusted P value that these numbers of ratings can give.',
    example: 0.11,
  })
  smallestPAmong: number | null;

  @NumberField({
    ...odds,
    description:
      'How many times as high the odds of a higher rating are (proportional odds); null where there are too few ratings.',
    example: 2.3,
  })
  oddsRatio: number | null;

  @NumberField({ ...odds, description: 'Lower end of its 95 % interval.', example: 0.9 })
  oddsRatioLow: number | null;

  @NumberField({ ...odds, description: 'Upper end of its 95 % interval.', example: 5.8 })
  oddsRatioHigh: number | null;
}

/** Runs of each arm that are still to be ridden. */
export class RunsNeededDto {
  @NumberField({
    ...count,
    description:
      'To find a difference as large as the margin 8 times in 10; 0: as many as these should be enough; null: more than can be ridden.',
    example: 9,
    nullable: true,
  })
  forDifference: number | null;

  @NumberField({
    ...count,
    description: "To show 'no practical difference' 8 times in 10; null: more than can be ridden.",
    example: 14,
    nullable: true,
  })
  forEquivalence: number | null;

  @NumberField({
    ...count,
    description: 'The same, if the scatter is as large as these runs allow; null: more than can be ridden.',
    example: 22,
    nullable: true,
  })
  forEquivalenceAtMost: number | null;
}

/** One arm against the current one. Negative differences are faster. */
export class ArmComparisonDto extends ComparedDto {
  @ChoiceField({ description: 'What the times say.', choices: VERDICTS })
  verdict: Verdict;

  @TextField({
    description:
      'The same in words, with the reason. Of several riders the verdict is for riders in general; where they are too few for one, the reading for these riders only is here.',
    maxLength: 1_000,
    example: 'Between these runs -0.6 % may be chance.',
  })
  sentence: string;

  @NumberField({ ...count, description: 'Timed runs that count.', example: 4 })
  timedRuns: number;

  @NumberField({ ...timeShare, description: 'Difference of time; null: none could be told.', example: -0.6 })
  differencePct: number | null;

  @NumberField({
    ...timeShare,
    description: 'Lower end of its interval, for all arms together.',
    example: -2.1,
  })
  lowPct: number | null;

  @NumberField({
    ...timeShare,
    description: 'Upper end of its interval, for all arms together.',
    example: 0.9,
  })
  highPct: number | null;

  @NumberField({
    description: 'Degrees of freedom of its test.',
    unit: '1',
    minimum: 0,
    maximum: 1e6,
    example: 11.4,
    nullable: true,
  })
  df: number | null;

  @NumberField({
    ...probability,
    description: 'P value of a difference, adjusted for the number of arms.',
    example: 0.3,
  })
  pDifference: number | null;

  @NumberField({
    ...probability,
    description: 'P value of being within the margin, adjusted for the number of arms.',
    example: 0.2,
  })
  pEquivalence: number | null;

  @PartField({
    description: 'Runs still needed; null unless it cannot be told yet.',
    type: () => RunsNeededDto,
    nullable: true,
  })
  needed: RunsNeededDto | null;

  @PartsField({ description: 'How it felt, beside the times.', type: () => RatingComparisonDto, maxItems: 4 })
  feel: RatingComparisonDto[];
}
