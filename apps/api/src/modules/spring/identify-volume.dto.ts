import {
  ChoiceField,
  NumberField,
  NumbersField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { EngineAnswerDto } from './answer.dto.js';
import { AirDto } from './end.dto.js';

const MOST_RUNS = 20;
const MOST_READINGS = 20;

export class PressureReadingDto {
  @NumberField({ description: 'Travel held.', unit: 'mm', minimum: 0, maximum: 300, example: 120 })
  travelMm: number;

  @NumberField({
    description: 'Pressure with the pump attached, after 30 s.',
    unit: 'psi',
    minimum: 0,
    maximum: 1_000,
    example: 128,
  })
  pressurePsi: number;
}

/** Readings of one fill; the pump stays attached from the first to the last. */
export class PressureRunDto {
  @NumberField({
    description: 'Spacers in it.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 30,
    example: 0,
  })
  spacers: number;

  @PartsField({
    description: 'Pressures at two travels or more.',
    type: () => PressureReadingDto,
    maxItems: MOST_READINGS,
  })
  readings: PressureReadingDto[];
}

const sd = { minimum: 0, optional: true };

export class VolumeAskDto {
  @PartsField({ description: 'The runs; repeats are runs.', type: () => PressureRunDto, maxItems: MOST_RUNS })
  runs: PressureRunDto[];

  @NumberField({
    description: "Air in the pump's hose and gauge.",
    unit: 'mL',
    minimum: 0,
    maximum: 100,
    example: 4,
  })
  hoseVolumeMl: number;

  @NumberField({
    ...sd,
    description: 'Standard uncertainty of the hose volume; 1.5 mL is assumed if left out.',
    unit: 'mL',
    maximum: 50,
    example: 1.5,
  })
  hoseVolumeSdMl?: number;

  @NumberField({
    ...sd,
    description: 'Standard uncertainty of the bore area, relative; 0.5 % is assumed if left out.',
    unit: '%',
    maximum: 20,
    example: 0.5,
  })
  boreAreaSdPct?: number;

  @NumberField({
    ...sd,
    description:
      "Standard uncertainty of the gauge's zero; 0.3 psi is assumed if left out; null: never checked.",
    unit: 'psi',
    maximum: 50,
    example: 0.3,
    nullable: true,
  })
  gaugeZeroSdPsi?: number | null;

  @NumberField({
    ...sd,
    description: 'Standard uncertainty of one pressure reading; 0.5 psi is assumed if left out.',
    unit: 'psi',
    minimum: 0.001,
    maximum: 20,
    example: 0.5,
  })
  gaugeReadingSdPsi?: number;

  @NumberField({
    ...sd,
    description: 'Standard uncertainty of one travel reading; 0.5 mm is assumed if left out.',
    unit: 'mm',
    maximum: 20,
    example: 0.5,
  })
  travelSdMm?: number;

  @NumberField({
    ...sd,
    description: 'Standard uncertainty of the spacer volume, relative; 10 % is assumed if left out.',
    unit: '%',
    maximum: 50,
    example: 10,
  })
  spacerVolumeSdPct?: number;
}

export class VolumeQuestionDto extends VolumeAskDto {
  @NumberField({ description: 'Area of the bore.', unit: 'mm²', minimum: 100, maximum: 10_000, example: 908 })
  boreAreaMm2: number;

  @NumberField({
    description: 'Volume of one spacer; needed where a run has spacers.',
    unit: 'mL',
    minimum: 0,
    maximum: 200,
    example: 10,
    optional: true,
  })
  spacerVolumeMl?: number;

  @PartField({ description: 'The air around; sea level if left out.', type: () => AirDto, optional: true })
  air?: AirDto;
}

export const VOLUME_SOURCES = [
  'gaugeReadings',
  'travelReadings',
  'boreArea',
  'hoseVolume',
  'gaugeZero',
  'spacerVolume',
] as const;
const REASONS = ['too-few-travels', 'no-pressure-rise', 'not-identifiable', 'too-uncertain'] as const;

export class VolumeShareDto {
  @ChoiceField({ description: 'Where it comes from.', choices: VOLUME_SOURCES })
  of: (typeof VOLUME_SOURCES)[number];

  @NumberField({ description: 'Part of the variance.', unit: '%', minimum: 0, maximum: 100, example: 62 })
  sharePct: number;
}

export class VolumeAnswerDto extends EngineAnswerDto {
  @ChoiceField({ description: 'Whether the readings tell the volume.', choices: ['identified', 'refused'] })
  status: 'identified' | 'refused';

  @ChoiceField({ description: 'Why they do not; null if they do.', choices: REASONS, nullable: true })
  reason: (typeof REASONS)[number] | null;

  @TextField({
    description: 'The answer in a sentence.',
    maxLength: 500,
    example: '227 mL ± 3 mL, limited by the hose volume.',
  })
  message: string;

  @NumberField({
    description: 'Positive chamber at full extension without spacers; null if refused.',
    unit: 'mL',
    minimum: 0,
    maximum: 1e6,
    example: 227,
    nullable: true,
  })
  positiveVolumeMl: number | null;

  @NumberField({
    description: 'Its standard uncertainty; null if refused.',
    unit: 'mL',
    minimum: 0,
    maximum: 1e6,
    example: 3,
    nullable: true,
  })
  sdMl: number | null;

  @NumberField({
    description: 'Standard uncertainty relative to the volume, where it is known.',
    unit: '%',
    minimum: 0,
    maximum: 1e9,
    example: 1.4,
    nullable: true,
  })
  relativeSdPct: number | null;

  @PartsField({
    description: 'What the uncertainty comes from, greatest part first; empty if refused.',
    type: () => VolumeShareDto,
    maxItems: 6,
  })
  shares: VolumeShareDto[];

  @NumberField({
    description:
      'Scatter of the readings over that entered for them; above 2 something moved, leaked or cooled.',
    unit: '1',
    minimum: 0,
    maximum: 1e9,
    example: 0.9,
    nullable: true,
  })
  scatter: number | null;

  @NumbersField({
    description: 'Each reading against the fit, in its own standard uncertainties, run by run.',
    unit: '1',
    minimum: -1e9,
    maximum: 1e9,
    example: -0.4,
    minItems: 0,
    maxItems: MOST_RUNS * MOST_READINGS,
  })
  residuals: number[];
}
