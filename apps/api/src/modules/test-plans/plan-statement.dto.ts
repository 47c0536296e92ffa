import { FlagField, NumberField, TextsField } from '../../platform/http/fields.js';

/** How well the order tells arms apart when a trend over the session is taken out. */
export class PlanPrecisionDto {
  @NumberField({
    description:
      'Variance of the least certain difference, over that of an ideal order: ABBA 1, ABAB 1.25, AABB 5. null: this order cannot tell the arms apart.',
    unit: '1',
    minimum: 1,
    maximum: 1e6,
    example: 1,
    nullable: true,
  })
  varianceInflation: number | null;

  @NumberField({
    description: 'Variance of an ideal order over the mean variance of this one: 100 % is ideal.',
    unit: '%',
    minimum: 0,
    maximum: 100,
    example: 100,
    nullable: true,
  })
  efficiencyPct: number | null;

  @NumberField({
    description: 'Counted runs less the terms that are estimated from them.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e4,
    example: 5,
  })
  residualDf: number;

  @FlagField({ description: 'Whether every arm follows every other equally often.', example: false })
  carryOverBalanced: boolean;
}

const share = { unit: '%', minimum: 0, maximum: 100, nullable: true };
const runs = { unit: '1', integer: true, minimum: 0, maximum: 1e5, nullable: true };

/** What a plan can tell; with several riders, its figures are for these riders only, and the words say what that leaves. */
export class PlanStatementDto {
  @NumberField({
    description: "The team's own scatter between runs that it was reckoned with; null: not known then.",
    unit: '% of time',
    minimum: 0,
    maximum: 100,
    example: 1.2,
    nullable: true,
  })
  scatterPct: number | null;

  @NumberField({
    description:
      'Smallest difference that is found 8 times in 10, of several riders for these only; null: no test is possible, or no scatter known.',
    unit: '% of time',
    minimum: 0,
    maximum: 1e3,
    example: 2.4,
    nullable: true,
  })
  detectableDifferencePct: number | null;

  @NumberField({
    ...share,
    description: 'Chance of finding a difference as large as the margin.',
    example: 40,
  })
  powerAtMarginPct: number | null;

  @NumberField({
    ...share,
    description: 'Chance of showing that arms without any difference are within the margin.',
    example: 12,
  })
  powerOfEquivalencePct: number | null;

  @NumberField({
    ...runs,
    description:
      'Runs of each arm, over all riders, that finding the margin takes; null: more than can be ridden.',
    example: 29,
  })
  runsForDifference: number | null;

  @NumberField({
    ...runs,
    description: "Runs of each arm that 'no practical difference' takes; null: more than can be ridden.",
    example: 32,
  })
  runsForEquivalence: number | null;

  @TextsField({
    description: 'The same in words.',
    maxItems: 20,
    maxLength: 500,
    example: ['A difference of 1.5 % is found 8 times in 10.'],
  })
  sentences: string[];
}
