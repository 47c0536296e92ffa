import type { PlannedRun } from '@loamledger/evidence';
import {
  ChoiceField,
  FlagField,
  IdField,
  IdsField,
  NumberField,
  PartField,
  TextField,
} from '../../platform/http/fields.js';
import { LONGEST_RUN_S } from '../runs/run-input.dto.js';

const KINDS = ['warm-up', 'counted'] as const satisfies readonly PlannedRun['kind'][];

/** A run of a plan. */
export class PlannedRunDto {
  @IdField({ description: 'The rider.' })
  riderId: string;

  @TextField({ description: 'Letter of the arm.', maxLength: 1, example: 'B' })
  letter: string;

  @ChoiceField({ description: 'A warm-up counts for nothing.', choices: KINDS })
  kind: PlannedRun['kind'];

  @NumberField({
    description: "Place in the rider's order, warm-ups included.",
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 1e6,
    example: 3,
  })
  position: number;

  @IdField({ description: 'The run that was logged for it; null: not ridden yet.', nullable: true })
  runId: string | null;

  @NumberField({
    description: 'Its time; null: not ridden yet, or not timed.',
    unit: 's',
    minimum: 1,
    maximum: LONGEST_RUN_S,
    example: 187.4,
    nullable: true,
  })
  timeS: number | null;

  @TextField({
    description: 'Why the run is void; null: it counts, or is not ridden yet.',
    maxLength: 500,
    example: 'Slid out in the second corner.',
    nullable: true,
  })
  voidReason: string | null;
}

/** Where one rider is in a plan. */
export class PlanProgressDto {
  @IdField({ description: 'The rider.' })
  riderId: string;

  @PartField({
    description: 'What to ride next; null: every run is ridden.',
    type: () => PlannedRunDto,
    nullable: true,
  })
  next: PlannedRunDto | null;

  @IdField({
    description: 'The set-up to ride next; null for a rider while a blind plan is open, and at the end.',
    nullable: true,
  })
  nextSetupId: string | null;

  @NumberField({
    description: 'Runs ridden, warm-ups and void ones included.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e4,
    example: 3,
  })
  ridden: number;

  @NumberField({
    description: 'Runs still to ride.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e4,
    example: 6,
  })
  left: number;

  @IdsField({ description: 'Runs of the plan that are void.', maxItems: 1_000 })
  voidedRunIds: string[];

  @FlagField({
    description: 'Whether a run was voided or restored since the rest was ordered: order the rest anew.',
    example: false,
  })
  restIsStale: boolean;
}

/** What was done for a rider, and where they are now. */
export class PlanStepDto extends PlanProgressDto {
  @IdField({
    description: 'The run that was logged, attached or voided; null where none was.',
    nullable: true,
  })
  runId: string | null;
}
