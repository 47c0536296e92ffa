import { answerOf } from '../../platform/http/answer.js';
import {
  ChoiceField,
  DayField,
  FlagField,
  IdField,
  MomentField,
  NumberField,
  PartField,
  TextField,
} from '../../platform/http/fields.js';
import { pageOf } from '../../platform/http/page.js';
import { SERVICE_ENTRY_KINDS, type ServiceEntryKind } from './service-entry.entity.js';

const hours = { unit: 'h', minimum: 0, maximum: 1e6 };
const count = { unit: '1', integer: true, minimum: 0, maximum: 1e9 };

export class UnitCareInputDto {
  @NumberField({
    description: "Riding between two services by the unit's manual; null: not entered.",
    unit: 'h',
    minimum: 1,
    maximum: 2_000,
    example: 50,
    optional: true,
    nullable: true,
  })
  serviceIntervalHours?: number | null;

  @NumberField({
    description: "Torque of the air cap by the unit's manual; null: not entered.",
    unit: 'N·m',
    minimum: 0.5,
    maximum: 100,
    example: 28,
    optional: true,
    nullable: true,
  })
  capTorqueNm?: number | null;
}

export class UnitCareDto extends answerOf(UnitCareInputDto) {}

/** How a unit stands against its service interval, and what the hours are made of. */
export class ServiceStandingDto {
  @NumberField({
    ...hours,
    description: 'Riding between two services; null: not entered.',
    example: 50,
    nullable: true,
  })
  intervalHours: number | null;

  @DayField({
    description: 'Day of the last service; null: none is recorded.',
    example: '2026-05-09',
    nullable: true,
  })
  lastServiceDay: string | null;

  @NumberField({
    ...hours,
    description: 'Riding since the last service, from that day on; without one, all that is recorded.',
    example: 31.4,
  })
  hoursSince: number;

  @NumberField({
    unit: 'h',
    minimum: -1e6,
    maximum: 1e6,
    description: 'Riding left until the next service, negative when overdue; null: no interval is entered.',
    example: 18.6,
    nullable: true,
  })
  hoursLeft: number | null;

  @FlagField({ description: 'Whether a service is due.', example: false })
  isDue: boolean;

  @NumberField({ ...count, description: 'Runs with a time, void ones too.', example: 120 })
  timedRuns: number;

  @NumberField({ ...hours, description: 'What they took.', example: 6.2 })
  timedHours: number;

  @NumberField({ ...count, description: 'Runs without a time on tracks with timed ones.', example: 10 })
  assumedRuns: number;

  @NumberField({
    ...hours,
    description: 'What they took if each took the mean time of its track. Assumed.',
    example: 0.5,
  })
  assumedHours: number;

  @NumberField({
    ...count,
    description: 'Runs without a time on tracks without any: not counted.',
    example: 0,
  })
  uncountedRuns: number;

  @NumberField({ ...hours, description: 'Riding entered by hand.', example: 24.7 })
  enteredHours: number;
}

export class UnitServiceDto {
  @IdField({ description: 'The unit.' })
  unitId: string;

  @PartField({ description: "What is entered of the unit's manual.", type: () => UnitCareDto })
  care: UnitCareDto;

  @PartField({ description: 'How it stands.', type: () => ServiceStandingDto })
  standing: ServiceStandingDto;
}

export class ServiceEntryInputDto {
  @ChoiceField({
    description: 'A service, or riding that no run tells of.',
    choices: SERVICE_ENTRY_KINDS,
    example: 'hours',
  })
  kind: ServiceEntryKind;

  @DayField({ description: 'Its day.', example: '2026-05-09' })
  day: string;

  @NumberField({
    description: 'Riding; for an entry about riding only.',
    unit: 'h',
    minimum: 0.1,
    maximum: 1_000,
    example: 2.5,
    optional: true,
    nullable: true,
  })
  ridingHours?: number | null;

  @TextField({ description: 'Who did it.', maxLength: 80, example: 'Workshop' })
  doneBy: string;

  @TextField({
    description: 'Note.',
    minLength: 0,
    maxLength: 2_000,
    example: 'A race without a clock.',
    optional: true,
  })
  note?: string;
}

export class ServiceEntryDto extends answerOf(ServiceEntryInputDto) {
  @IdField({ description: 'The entry.' })
  id: string;

  @IdField({ description: 'The unit.' })
  unitId: string;

  @MomentField({ description: 'When it was entered.', example: '2026-05-09T10:30:00Z' })
  enteredAt: string;

  @IdField({ description: 'The entry that it takes back; null: it stands for itself.', nullable: true })
  takesBackId: string | null;

  @FlagField({ description: 'Whether it was taken back.', example: false })
  isTakenBack: boolean;
}

export class ServiceEntryPageDto extends pageOf(ServiceEntryDto) {}

export class TakeBackInputDto {
  @TextField({ description: 'Why.', maxLength: 1_000, example: 'It was the other fork.' })
  note: string;
}
