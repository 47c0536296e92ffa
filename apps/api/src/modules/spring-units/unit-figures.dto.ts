import { answerOf } from '../../platform/http/answer.js';
import { ChoiceField, NumberField } from '../../platform/http/fields.js';
import { SOURCES, type Source } from '../../platform/database/source.js';

const sourceField = (of: string) =>
  ChoiceField({
    description: `Where ${of} comes from; 'assumed' if left out.`,
    choices: SOURCES,
    optional: true,
  });

/** Where each figure comes from. */
export class UnitSourcesDto {
  @sourceField('the stroke') strokeMm?: Source;
  @sourceField('the bore area') boreAreaMm2?: Source;
  @sourceField('the shaft area') shaftAreaMm2?: Source;
  @sourceField('the positive volume') positiveVolumeMl?: Source;
  @sourceField('the spacer volume') spacerVolumeMl?: Source;
  @sourceField('the negative volume') negativeVolumeMl?: Source;
  @sourceField('the transfer position') transferPositionMm?: Source;
  @sourceField('the lower-leg volume') lowerLegVolumeMl?: Source;
  @sourceField('the lower-leg area') lowerLegAreaMm2?: Source;
  @sourceField('the bumper length') bumperLengthMm?: Source;
  @sourceField('the bumper end force') bumperEndForceN?: Source;
  @sourceField('the low-speed damping') damperLowSpeedNsPerM?: Source;
  @sourceField('the knee speed') damperKneeSpeedMPerS?: Source;
  @sourceField('the high-speed damping') damperHighSpeedNsPerM?: Source;
  @sourceField('the seal friction') sealFrictionN?: Source;
  @sourceField('the thermal time of the positive chamber') thermalTimePositiveS?: Source;
  @sourceField('the thermal time of the negative chamber') thermalTimeNegativeS?: Source;
  @sourceField('the thermal time of the lower legs') thermalTimeLowerLegS?: Source;
}

const dampingField = { unit: 'N·s/m', minimum: 0, maximum: 20_000 };
const thermalTime = { unit: 's', minimum: 0, maximum: 1_000, optional: true };

/** A fork's or a shock's figures as the spring engine takes them: docs/equations/spring.md#quantities. */
export class UnitFiguresDto {
  @ChoiceField({ description: 'Fork or shock.', choices: ['fork', 'shock'] })
  kind: 'fork' | 'shock';

  @NumberField({
    description: 'Stroke: travel of a fork, shaft stroke of a shock.',
    unit: 'mm',
    minimum: 20,
    maximum: 300,
    example: 170,
  })
  strokeMm: number;

  @NumberField({
    description: 'Area of the bore of the positive chamber.',
    unit: 'mm²',
    minimum: 100,
    maximum: 10_000,
    example: 908,
  })
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
    description: 'Volume of the positive chamber at full extension, without spacers.',
    unit: 'mL',
    minimum: 10,
    maximum: 2_000,
    example: 227,
  })
  positiveVolumeMl: number;

  @NumberField({ description: 'Volume of one spacer.', unit: 'mL', minimum: 0, maximum: 200, example: 10 })
  spacerVolumeMl: number;

  @NumberField({
    description: 'Volume of the negative chamber at full extension.',
    unit: 'mL',
    minimum: 0.5,
    maximum: 500,
    example: 31.7,
  })
  negativeVolumeMl: number;

  @NumberField({
    description: 'Travel at which the two chambers equalise.',
    unit: 'mm',
    minimum: 0,
    maximum: 50,
    example: 3,
  })
  transferPositionMm: number;

  @NumberField({
    description: 'Air in the lower legs at full extension; forks only.',
    unit: 'mL',
    minimum: 0,
    maximum: 5_000,
    example: 704,
    optional: true,
  })
  lowerLegVolumeMl?: number;

  @NumberField({
    description: 'Area that compresses the lower-leg air; 0 for a shock.',
    unit: 'mm²',
    minimum: 0,
    maximum: 10_000,
    example: 2_111,
    optional: true,
  })
  lowerLegAreaMm2?: number;

  @NumberField({
    description: 'Length of the bottom-out bumper.',
    unit: 'mm',
    minimum: 0,
    maximum: 50,
    example: 8,
  })
  bumperLengthMm: number;

  @NumberField({
    description: 'Force of the bumper at the end of the stroke.',
    unit: 'N',
    minimum: 0,
    maximum: 50_000,
    example: 1_500,
  })
  bumperEndForceN: number;

  @NumberField({ ...dampingField, description: 'Compression damping below the knee.', example: 600 })
  damperLowSpeedNsPerM: number;

  @NumberField({
    description: 'Speed of the knee of the damper.',
    unit: 'm/s',
    minimum: 0,
    maximum: 10,
    example: 0.25,
  })
  damperKneeSpeedMPerS: number;

  @NumberField({ ...dampingField, description: 'Compression damping above the knee.', example: 180 })
  damperHighSpeedNsPerM: number;

  @NumberField({ description: 'Friction of the seals.', unit: 'N', minimum: 0, maximum: 1_000, example: 18 })
  sealFrictionN: number;

  @NumberField({
    ...thermalTime,
    description: 'Thermal time constant of the positive chamber; 0: isothermal. Assumed 1.5 s if left out.',
    example: 1.5,
  })
  thermalTimePositiveS?: number;

  @NumberField({
    ...thermalTime,
    description: 'Thermal time constant of the negative chamber. Assumed 0.3 s if left out.',
    example: 0.3,
  })
  thermalTimeNegativeS?: number;

  @NumberField({
    ...thermalTime,
    description: 'Thermal time constant of the lower-leg air. Assumed 1 s if left out.',
    example: 1,
  })
  thermalTimeLowerLegS?: number;
}

/** The same with nothing left out. */
export class CompleteUnitFiguresDto extends answerOf(UnitFiguresDto) {}

/** The same with nothing left out. */
export class CompleteUnitSourcesDto extends answerOf(UnitSourcesDto) {}
