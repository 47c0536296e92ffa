import { ChoiceField, NumberField, PartField, PartsField, TextField } from '../../platform/http/fields.js';
import { EngineAnswerDto } from './answer.dto.js';
import { AirDto } from './end.dto.js';

const pressure = { unit: 'psi', minimum: 1, maximum: 1_000 };
const MOST_REPEATS = 20;

export class EqualisingDto {
  @NumberField({
    ...pressure,
    description: 'Full extension, pump attached, negative chamber empty.',
    example: 70,
  })
  beforePsi: number;

  @NumberField({
    ...pressure,
    description: 'The same after one slow stroke past the transfer position.',
    example: 62,
  })
  afterPsi: number;
}

export class NegativeVolumeAskDto {
  @PartsField({ description: 'The repeats.', type: () => EqualisingDto, maxItems: MOST_REPEATS })
  repeats: EqualisingDto[];

  @NumberField({
    description: 'Spacers in it.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 30,
    example: 0,
  })
  spacers: number;

  @NumberField({
    description: "Air in the pump's hose and gauge.",
    unit: 'mL',
    minimum: 0,
    maximum: 100,
    example: 4,
  })
  hoseVolumeMl: number;

  @NumberField({
    description: 'Standard uncertainty of the hose volume; 1.5 mL is assumed if left out.',
    unit: 'mL',
    minimum: 0,
    maximum: 50,
    example: 1.5,
    optional: true,
  })
  hoseVolumeSdMl?: number;

  @NumberField({
    description: 'Standard uncertainty of one pressure reading; 0.5 psi is assumed if left out.',
    unit: 'psi',
    minimum: 0,
    maximum: 20,
    example: 0.5,
    optional: true,
  })
  gaugeReadingSdPsi?: number;
}

export class NegativeVolumeQuestionDto extends NegativeVolumeAskDto {
  @NumberField({
    description: 'Positive chamber at full extension without spacers.',
    unit: 'mL',
    minimum: 10,
    maximum: 2_000,
    example: 227,
  })
  positiveVolumeMl: number;

  @NumberField({
    description: 'Its standard uncertainty.',
    unit: 'mL',
    minimum: 0,
    maximum: 500,
    example: 3,
  })
  positiveVolumeSdMl: number;

  @NumberField({ description: 'Volume of one spacer.', unit: 'mL', minimum: 0, maximum: 200, example: 10 })
  spacerVolumeMl: number;

  @NumberField({ description: 'Area of the bore.', unit: 'mm²', minimum: 100, maximum: 10_000, example: 908 })
  boreAreaMm2: number;

  @NumberField({
    description: 'Area of the air shaft.',
    unit: 'mm²',
    minimum: 0,
    maximum: 5_000,
    example: 78.5,
  })
  shaftAreaMm2: number;

  @NumberField({
    description: 'Travel at which the two chambers equalise.',
    unit: 'mm',
    minimum: 0,
    maximum: 50,
    example: 3,
  })
  transferPositionMm: number;

  @PartField({ description: 'The air around; sea level if left out.', type: () => AirDto, optional: true })
  air?: AirDto;
}

const REASONS = ['no-pressure-drop', 'too-uncertain'] as const;

export class NegativeVolumeAnswerDto extends EngineAnswerDto {
  @ChoiceField({ description: 'Whether the readings tell the volume.', choices: ['identified', 'refused'] })
  status: 'identified' | 'refused';

  @ChoiceField({ description: 'Why they do not; null if they do.', choices: REASONS, nullable: true })
  reason: (typeof REASONS)[number] | null;

  @TextField({ description: 'The answer in a sentence.', maxLength: 500, example: '31.7 mL ± 2.5 mL.' })
  message: string;

  @NumberField({
    description: 'Negative chamber at full extension; null if refused.',
    unit: 'mL',
    minimum: 0,
    maximum: 1e6,
    example: 31.7,
    nullable: true,
  })
  negativeVolumeMl: number | null;

  @NumberField({
    description: 'Its standard uncertainty; null if refused.',
    unit: 'mL',
    minimum: 0,
    maximum: 1e6,
    example: 2.5,
    nullable: true,
  })
  sdMl: number | null;
}
