import { PickType } from '@nestjs/swagger';
import { NumberField, PartField } from '../../platform/http/fields.js';
import { PlanPrecisionDto, PlanStatementDto } from './plan-statement.dto.js';
import { TestPlanInputDto } from './test-plan-input.dto.js';

/** The size of a plan that is thought about: what it can tell depends on nothing else. */
export class PlanPreviewInputDto extends PickType(TestPlanInputDto, [
  'runsAnArm',
  'differenceToTellPct',
  'marginPct',
  'trend',
  'warmUps',
] as const) {
  @NumberField({
    description: 'Number of arms.',
    unit: '1',
    integer: true,
    minimum: 2,
    maximum: 8,
    example: 2,
  })
  arms: number;

  @NumberField({
    description: 'Number of riders.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 20,
    example: 1,
  })
  riders: number;
}

/** What a plan of that size could tell. */
export class PlanPreviewDto {
  @NumberField({
    description: 'Counted runs of each arm by each rider.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 20,
    example: 4,
  })
  runsAnArm: number;

  @PartField({ description: 'How precise its order would be.', type: () => PlanPrecisionDto })
  precision: PlanPrecisionDto;

  @PartField({ description: 'What it could tell.', type: () => PlanStatementDto })
  statement: PlanStatementDto;
}
