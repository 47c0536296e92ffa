import { WORK_STEPS, type WorkStep } from '@loamledger/spring';
import {
  ChoiceField,
  FlagField,
  IdField,
  MomentField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { PageQuery, pageOf } from '../../platform/http/page.js';
import { SetupDto } from '../setups/setups.dto.js';
import { ENDS, type End } from '../suspension/end-inputs.js';

const spacers = { unit: '1', integer: true, maximum: 30 };
const clicks = { unit: 'clicks from fully closed', integer: true, minimum: 0, maximum: 60, nullable: true };

const WORK_STATES = ['open', 'done', 'replaced'] as const;
export type WorkState = (typeof WORK_STATES)[number];

export class WorkStepDto {
  @IdField({ description: 'The step.' })
  id: string;

  @ChoiceField({ description: 'At which end.', choices: ENDS })
  end: End;

  @ChoiceField({ description: 'What is done.', choices: WORK_STEPS })
  step: WorkStep;

  @NumberField({
    description: 'Pressure to pump to, gauge; null: the step pumps nothing.',
    unit: 'psi',
    minimum: 0,
    maximum: 600,
    example: 71,
    nullable: true,
  })
  pressurePsi: number | null;

  @NumberField({
    ...spacers,
    description: 'Spacers to put in, negative: to take out; null: none are moved.',
    minimum: -30,
    example: 1,
    nullable: true,
  })
  spacersChange: number | null;

  @NumberField({
    ...spacers,
    description: 'Spacers in it then; null: none are moved.',
    minimum: 0,
    example: 3,
    nullable: true,
  })
  spacersThen: number | null;

  @NumberField({
    ...clicks,
    description: 'Clicks it was at; null: not noted, or no clicks are set.',
    example: 8,
  })
  clicksFrom: number | null;

  @NumberField({ ...clicks, description: 'Clicks to set it to; null: no clicks are set.', example: 9 })
  clicksTo: number | null;

  @NumberField({
    description: "Torque of the air cap as the team has entered it; null: look it up in the unit's manual.",
    unit: 'N·m',
    minimum: 0,
    maximum: 100,
    example: 28,
    nullable: true,
  })
  capTorqueNm: number | null;

  @MomentField({
    description: 'When it was done; null: it is to be done.',
    example: '2026-05-09T10:30:00Z',
    nullable: true,
  })
  doneAt: string | null;

  @TextField({ description: 'Who has done it.', maxLength: 200, example: 'Workshop', nullable: true })
  doneByName: string | null;
}

/** What one end needs. */
export class WorkPartsDto {
  @ChoiceField({ description: 'At which end.', choices: ENDS })
  end: End;

  @IdField({ description: 'The unit.' })
  unitId: string;

  @TextField({ description: 'Its name.', maxLength: 80, example: 'Fork of bike A' })
  unitName: string;

  @NumberField({ ...spacers, description: 'Spacers that are still to go in.', minimum: 0, example: 1 })
  spacersNeeded: number;

  @NumberField({
    description: 'Spacers of its size in stock.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e9,
    example: 4,
  })
  spacersInStock: number;
}

export class WorkOrderDto {
  @IdField({ description: 'The work order.' })
  id: string;

  @IdField({ description: 'The bike.' })
  bikeId: string;

  @MomentField({ description: 'When it was made.', example: '2026-05-09T10:30:00Z' })
  madeAt: string;

  @TextField({ description: 'Who made it.', minLength: 0, maxLength: 200, example: 'Workshop' })
  madeByName: string;

  @ChoiceField({
    description: '`replaced`: it is not done, and the bike has a newer set-up.',
    choices: WORK_STATES,
  })
  state: WorkState;

  @PartField({ description: 'What was in the bike; null: not known.', type: () => SetupDto, nullable: true })
  from: SetupDto | null;

  @PartField({ description: 'What it is to be.', type: () => SetupDto })
  to: SetupDto;

  @PartsField({
    description: 'What each end that is worked on needs.',
    type: () => WorkPartsDto,
    maxItems: 2,
  })
  parts: WorkPartsDto[];

  @PartsField({ description: 'The steps in their order.', type: () => WorkStepDto, maxItems: 100 })
  steps: WorkStepDto[];
}

export class WorkOrderPageDto extends pageOf(WorkOrderDto) {}

export class WorkOrderListQuery extends PageQuery {
  @IdField({ description: 'Only of this bike.', optional: true })
  bikeId?: string;
}

export class WorkOrderInputDto {
  @IdField({ description: 'The set-up that the bike is to have.' })
  setupId: string;
}

export class TickInputDto {
  @FlagField({ description: 'Whether the step is done.', example: true })
  isDone: boolean;
}
