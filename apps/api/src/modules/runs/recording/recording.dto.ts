import { Type } from 'class-transformer';
import {
  ChoiceField,
  DayField,
  IdField,
  MomentField,
  NumberField,
  PartsField,
  TextsField,
} from '../../../platform/http/fields.js';
import { CONDITIONS, type Condition } from '../../sessions/conditions.js';
import { LONGEST_RUN_S } from '../run-input.dto.js';

export const MOST_RUNS = 200;
/** A hand-held or worn receiver under open sky, one standard deviation along one axis (common practice, no source). */
export const USUAL_POSITION_SD_M = 3;

export class RecordingQuery {
  @IdField({ description: 'The track, which must have both gates.' })
  trackId: string;

  @IdField({ description: 'The bike that was ridden.' })
  bikeId: string;

  @ChoiceField({
    description: "State of the ground; 'dry' if left out.",
    choices: CONDITIONS,
    optional: true,
  })
  condition?: Condition;

  @Type(() => Number)
  @NumberField({
    description: `Standard uncertainty of a position along one axis; ${USUAL_POSITION_SD_M} m if left out.`,
    unit: 'm',
    minimum: 0.01,
    maximum: 50,
    example: 3,
    optional: true,
  })
  positionSdM?: number;

  @Type(() => Number)
  @NumberField({
    description: 'What the clock at the track is ahead of UTC, for the day of each run; 0 if left out.',
    unit: 'min',
    integer: true,
    minimum: -840,
    maximum: 840,
    example: 120,
    optional: true,
  })
  utcOffsetMin?: number;
}

/** A run as it was cut from the recording. */
export class RecordedRunDto {
  @MomentField({ description: 'When the start gate was passed.', example: '2026-05-09T10:30:00.400Z' })
  startedAt: string;

  @DayField({ description: 'The day by the clock at the track.', example: '2026-05-09' })
  day: string;

  @NumberField({ description: 'Its time.', unit: 's', minimum: 1, maximum: LONGEST_RUN_S, example: 187.4 })
  timeS: number;

  @NumberField({
    description:
      'Standard uncertainty of the time, from the position and the interval between fixes; 95 of 100 times are within 1.96 of it.',
    unit: 's',
    minimum: 0,
    maximum: LONGEST_RUN_S,
    example: 0.4,
  })
  timeSdS: number;
}

/** What a recording holds. */
export class RecordingDto {
  @NumberField({
    description: 'Positions that were read.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 100_000,
    example: 5_400,
  })
  fixes: number;

  @PartsField({ description: 'The runs, in their order.', type: () => RecordedRunDto, maxItems: MOST_RUNS })
  runs: RecordedRunDto[];
}

export class RecordingPreviewDto extends RecordingDto {
  @TextsField({
    description: 'What stands against storing them; with one or more nothing would be stored.',
    maxItems: MOST_RUNS + 1,
    maxLength: 500,
    example: ['The run of 10:30:00 is stored already.'],
  })
  problems: string[];
}
