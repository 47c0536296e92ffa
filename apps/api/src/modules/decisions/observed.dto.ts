import type { OutcomeVerdict } from '@loamledger/evidence';
import { ChoiceField, NumberField, PartField, TextField } from '../../platform/http/fields.js';

const OUTCOME_VERDICTS = [
  'as expected',
  'more travel',
  'less travel',
  'cannot tell',
] as const satisfies readonly OutcomeVerdict[];

const count = { unit: '1', integer: true, minimum: 0, maximum: 1e6 };
const travel = { unit: 'mm', minimum: 0, maximum: 300, nullable: true };
const probability = { unit: '1', minimum: 0, maximum: 1, nullable: true };

/** What the runs on a set-up showed of one end, held against what was expected. */
export class ObservedEndDto {
  @NumberField({ ...count, description: 'Ring readings that count.', example: 6 })
  readings: number;

  @NumberField({
    ...count,
    description: "Those that say only 'at least': the travel was all used.",
    example: 0,
  })
  atLeast: number;

  @NumberField({ ...count, description: "Those that say only 'at most'.", example: 0 })
  atMost: number;

  @NumberField({ ...travel, description: 'Median of the travel used; null without a reading.', example: 138 })
  medianTravelMm: number | null;

  @NumberField({ ...travel, description: 'Most travel used; null without a reading.', example: 155 })
  mostTravelMm: number | null;

  @NumberField({
    description:
      'Observed less expected hit height in standard errors, positive where more travel is used; null where it cannot be told.',
    unit: '1',
    minimum: -1e6,
    maximum: 1e6,
    example: 0.8,
    nullable: true,
  })
  standardErrors: number | null;

  @NumberField({ ...count, description: 'Runs of which it is known whether they bottomed out.', example: 6 })
  bottomOutRuns: number;

  @NumberField({ ...count, description: 'Runs that bottomed out: felt, or by the ring.', example: 1 })
  bottomedRuns: number;

  @NumberField({
    ...probability,
    description: 'Chance of at least as many, by the expected risk; null: none was expected.',
    example: 0.26,
  })
  asManyP: number | null;

  @NumberField({ ...probability, description: 'Chance of at most as many.', example: 0.97 })
  asFewP: number | null;

  @ChoiceField({ description: 'What that says.', choices: OUTCOME_VERDICTS })
  verdict: OutcomeVerdict;

  @TextField({
    description: 'The same in words.',
    maxLength: 500,
    example: '6 runs: travel as expected (0.7 standard errors more).',
  })
  sentence: string;
}

export class ObservedDto {
  @NumberField({ ...count, description: 'Runs on the set-up that count.', example: 6 })
  runs: number;

  @NumberField({ ...count, description: 'Void runs on it.', example: 0 })
  voided: number;

  @PartField({ description: 'The fork.', type: () => ObservedEndDto, nullable: true })
  fork: ObservedEndDto | null;

  @PartField({ description: 'The shock.', type: () => ObservedEndDto, nullable: true })
  shock: ObservedEndDto | null;
}
