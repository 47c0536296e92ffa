import { OmitType } from '@nestjs/swagger';
import {
  ChoiceField,
  DayField,
  FlagField,
  IdField,
  NumberField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { RunInputDto, VoidInputDto } from '../runs/run-input.dto.js';
import { LOOKS, type Looks } from './looks.js';

export const TRENDS = ['none', 'linear', 'quadratic'] as const;

/** Who rides which bike in a plan. */
export class PlanRiderDto {
  @IdField({ description: 'The rider.' })
  riderId: string;

  @IdField({ description: 'The bike ridden in this plan.' })
  bikeId: string;
}

/** What an arm means on one bike. */
export class ArmSetupDto {
  @IdField({ description: 'The bike.' })
  bikeId: string;

  @IdField({ description: 'The set-up of this bike that stands for the arm.' })
  setupId: string;
}

/** One thing to try: a named change, with one set-up for each bike of the plan. */
export class PlanArmInputDto {
  @TextField({ description: 'What is tried.', maxLength: 100, example: 'One spacer more' })
  name: string;

  @PartsField({
    description:
      'Exactly one set-up of each bike of the plan. Riders on their own bikes each ride their own set-up under the same name.',
    type: () => ArmSetupDto,
    maxItems: 20,
  })
  setups: ArmSetupDto[];
}

export class TestPlanInputDto {
  @TextField({
    description: 'What the plan is to tell.',
    maxLength: 200,
    example: 'Does one spacer more help?',
  })
  name: string;

  @IdField({ description: 'The session that all runs belong to; or leave it out.', optional: true })
  sessionId?: string;

  @IdField({ description: 'The track, where no session is given.', optional: true })
  trackId?: string;

  @DayField({
    description: 'The day it is meant for, where no session is given.',
    example: '2026-05-09',
    optional: true,
  })
  day?: string;

  @PartsField({ description: 'Who rides which bike.', type: () => PlanRiderDto, maxItems: 20 })
  riders: PlanRiderDto[];

  @PartsField({
    description: 'At least two arms; the first is the current one, which the others are compared with.',
    type: () => PlanArmInputDto,
    maxItems: 8,
  })
  arms: PlanArmInputDto[];

  @NumberField({
    description: 'Counted runs of each arm by each rider. Give this or differenceToTellPct.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 20,
    example: 4,
    optional: true,
  })
  runsAnArm?: number;

  @NumberField({
    description:
      "Difference of time that is to be found 8 times in 10; the number of runs follows from the team's own scatter.",
    unit: '% of time',
    minimum: 0.1,
    maximum: 20,
    example: 2,
    optional: true,
  })
  differenceToTellPct?: number;

  @NumberField({
    description: 'Difference of time worth acting on; 1 % if left out.',
    unit: '% of time',
    minimum: 0.1,
    maximum: 20,
    example: 1,
    optional: true,
  })
  marginPct?: number;

  @ChoiceField({
    description: "Trend over the session that is taken out; 'linear' if left out.",
    choices: TRENDS,
    optional: true,
    example: 'linear',
  })
  trend?: (typeof TRENDS)[number];

  @ChoiceField({
    description:
      "When the times are looked at; 'at the end' if left out. Every look after a block spends a part of the error rate.",
    choices: LOOKS,
    optional: true,
  })
  looks?: Looks;

  @FlagField({
    description: 'Whether riders see letters only until the plan is closed; false if left out.',
    example: true,
    optional: true,
  })
  blind?: boolean;

  @NumberField({
    description: 'Runs of each rider before the first counted one; 1 if left out.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 10,
    example: 1,
    optional: true,
  })
  warmUps?: number;

  @NumberField({
    description:
      'Draws letters and orders: the same seed gives the same plan. Drawn by the service if left out.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 2_147_483_647,
    example: 20_260_509,
    optional: true,
  })
  seed?: number;
}

/** A run for the rider's next place in a plan: bike, set-up and track are the plan's. */
export class PlanRunInputDto extends OmitType(RunInputDto, ['bikeId', 'setupId', 'trackId'] as const) {
  @NumberField({
    description:
      "Place in the rider's order that was ridden, as the phone saw it: refused where the rider's next is another, so that a run sent late is not taken for one of another arm. Not checked if left out.",
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 1_000,
    example: 4,
    optional: true,
  })
  position?: number;
}

export class AttachInputDto {
  @IdField({ description: 'A logged run, on the set-up of an arm that the rider has still to ride.' })
  runId: string;
}

export class PlanVoidInputDto extends VoidInputDto {
  @IdField({ description: 'A run of the plan.' })
  runId: string;
}

export class ReplanInputDto {
  @IdField({ description: 'The rider whose remaining runs are ordered anew.' })
  riderId: string;
}

export class ClosingInputDto {
  @TextField({
    description: 'Why it is closed.',
    minLength: 0,
    maxLength: 1_000,
    example: 'All runs ridden.',
    optional: true,
  })
  note?: string;
}
