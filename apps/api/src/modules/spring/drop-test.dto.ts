import {
  ChoiceField,
  FlagField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { EngineAnswerDto, HeightField, TravelField } from './answer.dto.js';
import { FillDto, withEnd } from './end.dto.js';

const MOST_LANDINGS = 200;
const number = { unit: '1', minimum: -1e9, maximum: 1e9 };

/** One landing of a drop test. */
export class DropLandingDto extends FillDto {
  @NumberField({
    description: 'Measured height of the drop to flat.',
    unit: 'm',
    minimum: 0.05,
    maximum: 20,
    example: 0.8,
  })
  dropHeightM: number;

  @TravelField('Travel used, by the O-ring.', 128)
  travelUsedMm: number;
}

export class DropTestAskDto {
  @PartsField({
    description: 'The landings in the order of trying.',
    type: () => DropLandingDto,
    maxItems: MOST_LANDINGS,
  })
  landings: DropLandingDto[];
}

export class DropTestQuestionDto extends withEnd(DropTestAskDto) {}

/** A fitted factor with its 90 % interval. */
export class FactorDto {
  @NumberField({ ...number, description: 'The factor.', example: 0.46 })
  value: number;

  @NumberField({ ...number, description: 'Lower end of the 90 % interval.', example: 0.42 })
  lower: number;

  @NumberField({ ...number, description: 'Upper end of the 90 % interval.', example: 0.5 })
  upper: number;

  @NumberField({ ...number, description: 'Standard uncertainty of its logarithm.', example: 0.05 })
  logSd: number;
}

export class DampingFactorDto extends FactorDto {
  @FlagField({
    description: 'Whether the landings tell it; if not, it is hardly more than what was entered.',
    example: false,
  })
  isTold: boolean;
}

/** All landings of one set-up from one height against the fit. */
export class DropSetUpDto extends FillDto {
  @HeightField('Height of the drop.', 0.8)
  dropHeightM: number;

  @NumberField({ ...number, integer: true, description: 'Landings.', example: 3 })
  count: number;

  @TravelField('Mean travel read.', 128)
  readMm: number;

  @TravelField('Travel by the fit.', 126)
  predictedMm: number;

  @NumberField({
    ...number,
    description: 'Read less predicted, in standard uncertainties of the mean.',
    example: 0.9,
  })
  residual: number;
}

const WARNINGS = ['no-repeats', 'scatter', 'order-follows-set-up', 'drift'] as const;

export class DropTestWarningDto {
  @ChoiceField({ description: 'What is wrong with it.', choices: WARNINGS })
  code: (typeof WARNINGS)[number];

  @TextField({ description: 'In words.', maxLength: 300, example: 'No set-up was repeated.' })
  message: string;
}

const REASONS = ['too-few-readings', 'not-identifiable'] as const;

export class DropTestAnswerDto extends EngineAnswerDto {
  @ChoiceField({ description: 'Whether the landings could be fitted.', choices: ['fitted', 'refused'] })
  status: 'fitted' | 'refused';

  @ChoiceField({ description: 'Why not; null if they could.', choices: REASONS, nullable: true })
  reason: (typeof REASONS)[number] | null;

  @TextField({
    description: 'The answer in a sentence.',
    maxLength: 500,
    example: '46 % of the drop goes into the spring (42 to 50 %).',
  })
  message: string;

  @PartField({
    description: 'Part of the drop that goes into the spring: hit height over drop height; null if refused.',
    type: () => FactorDto,
    nullable: true,
  })
  absorption: FactorDto | null;

  @PartField({
    description: 'Damping over that entered; null if refused.',
    type: () => DampingFactorDto,
    nullable: true,
  })
  damping: DampingFactorDto | null;

  @PartsField({
    description: 'Predicted against read for each set-up.',
    type: () => DropSetUpDto,
    maxItems: MOST_LANDINGS,
  })
  setUps: DropSetUpDto[];

  @NumberField({
    ...number,
    description: "Scatter of the readings over the ring's error; null if refused.",
    example: 1.1,
    nullable: true,
  })
  scatter: number | null;

  @PartsField({ description: 'Reasons to distrust it.', type: () => DropTestWarningDto, maxItems: 4 })
  warnings: DropTestWarningDto[];

  @NumberField({
    ...number,
    integer: true,
    description: 'Readings too near full travel to tell a height, left out.',
    example: 0,
  })
  atFullTravel: number;
}
