import { ApiProperty } from '@nestjs/swagger';
import {
  ChoiceField,
  DayField,
  FlagField,
  NumberField,
  PartsField,
  TextField,
} from '../../../platform/http/fields.js';
import { CONDITIONS, type Condition } from '../../sessions/conditions.js';
import { LONGEST_RUN_S } from '../run-input.dto.js';
import { MAX_REPORTED_PROBLEMS } from './csv.errors.js';
import { MAX_ROWS } from './read-table.js';

export const MAX_PREVIEW_ROWS = 20;
const MAX_LINES = 1e7;

const count = (description: string, example: number) =>
  NumberField({ description, unit: '1', integer: true, minimum: 0, maximum: MAX_ROWS, example });
const lineNumber = () =>
  NumberField({
    description: 'Line of the file, counted from 1.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: MAX_LINES,
    example: 17,
  });

/** What an import stored. */
export class ImportDto {
  @count('Runs, the voided ones among them.', 212) runs: number;
  @count('Runs that are void from the start, because they were spoilt.', 9) voidedRuns: number;
  @count('Sessions that were opened.', 14) newSessions: number;
  @count('Set-ups that were made.', 23) newSetups: number;
}

/** A run as it is understood. */
export class ImportRowDto {
  @lineNumber() line: number;

  @DayField({ description: 'The day.', example: '2026-05-09' })
  day: string;

  @TextField({ description: 'The track.', maxLength: 80, example: 'Quarry Stairs' })
  track: string;

  @TextField({ description: 'The bike.', maxLength: 80, example: 'Rider A, enduro' })
  bike: string;

  @TextField({ description: 'The rider.', maxLength: 80, example: 'Rider A' })
  rider: string;

  @ChoiceField({ description: 'State of the ground.', choices: CONDITIONS })
  condition: Condition;

  @NumberField({
    description: 'Number of the set-up ridden, counted for the bike.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 1e9,
    example: 3,
  })
  setupRevision: number;

  @NumberField({
    description: 'Time of the run; null: not timed.',
    unit: 's',
    minimum: 1,
    maximum: LONGEST_RUN_S,
    example: 187.4,
    nullable: true,
  })
  timeS: number | null;

  @FlagField({ description: 'Whether the run is void from the start.', example: false })
  voided: boolean;
}

/** One thing in a file that cannot be taken. */
export class ImportProblemDto {
  @lineNumber() line: number;

  @TextField({
    description: 'Header of the column; empty where the whole line is meant.',
    minLength: 0,
    maxLength: 100,
    example: 'fork_travel_left_mm',
  })
  column: string;

  @ApiProperty({
    description: 'What was given; null where nothing was.',
    oneOf: [{ type: 'string' }, { type: 'number' }, { type: 'boolean' }, { type: 'null' } as never],
    example: 190,
  })
  given: string | number | boolean | null;

  @TextField({
    description: 'What would be allowed.',
    maxLength: 2_000,
    example: 'from 0 to the stroke of this fork, 170 mm',
  })
  allowed: string;
}

/** What an import would store, and what stands against it. */
export class ImportPreviewDto extends ImportDto {
  @PartsField({
    description: 'The first runs as they are understood.',
    type: () => ImportRowDto,
    maxItems: MAX_PREVIEW_ROWS,
  })
  rows: ImportRowDto[];

  @NumberField({
    description: 'How many problems there are; with one or more nothing would be stored.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: MAX_LINES,
    example: 0,
  })
  problemCount: number;

  @PartsField({
    description: 'The problems, the first of them if they are very many.',
    type: () => ImportProblemDto,
    maxItems: MAX_REPORTED_PROBLEMS,
  })
  problems: ImportProblemDto[];
}
