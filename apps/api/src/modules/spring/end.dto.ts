import { answerOf } from '../../platform/http/answer.js';
import { NumberField, PartField, PartsField } from '../../platform/http/fields.js';
import { LeverageRowDto } from '../bikes/bikes.dto.js';
import { UnitFiguresDto } from '../spring-units/unit-figures.dto.js';

/** The air around. */
export class AirDto {
  @NumberField({
    description:
      'Altitude, from which the standard atmosphere gives what was not read; sea level if left out.',
    unit: 'm',
    minimum: -400,
    maximum: 5_000,
    example: 1_450,
    optional: true,
  })
  altitudeM?: number;

  @NumberField({
    description: 'Absolute air pressure read there; from the altitude if left out.',
    unit: 'hPa',
    minimum: 500,
    maximum: 1_085,
    example: 851,
    optional: true,
  })
  stationPressureHpa?: number;

  @NumberField({
    description: 'Air temperature; of the standard atmosphere at the altitude if left out.',
    unit: '°C',
    minimum: -40,
    maximum: 55,
    example: 12,
    optional: true,
  })
  airTemperatureC?: number;
}

/** What is in a unit. */
export class FillDto {
  @NumberField({
    description: 'Air pressure by the pump, gauge, where the question is asked.',
    unit: 'psi',
    minimum: 1,
    maximum: 600,
    example: 71,
  })
  pressurePsi: number;

  @NumberField({
    description: 'Volume spacers in the positive chamber.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 30,
    example: 2,
  })
  spacers: number;
}

const sdPct = (of: string, assumed: number) => ({
  description: `Of ${of}, relative to itself; ${assumed} % is assumed if left out.`,
  unit: '%',
  minimum: 0,
  maximum: 50,
  example: assumed,
  optional: true,
});

/** Standard uncertainties (68 % of errors are smaller) of what an answer is computed from. */
export class EndUncertaintyDto {
  @NumberField({
    description: "Of the pump's gauge; 1 psi is assumed if left out.",
    unit: 'psi',
    minimum: 0,
    maximum: 20,
    example: 1,
    optional: true,
  })
  pressurePsi?: number;

  @NumberField(sdPct('the sprung mass', 6))
  sprungMassPct?: number;

  @NumberField(sdPct('the positive volume', 6))
  positiveVolumePct?: number;

  @NumberField(sdPct('the negative volume', 25))
  negativeVolumePct?: number;

  @NumberField(sdPct('the spacer volume', 10))
  spacerVolumePct?: number;

  @NumberField(sdPct('the lower-leg volume', 20))
  lowerLegVolumePct?: number;

  @NumberField(sdPct('the damping', 30))
  dampingPct?: number;

  @NumberField(sdPct('the seal friction', 50))
  sealFrictionPct?: number;

  @NumberField({
    description: 'Of one ring reading; 2 mm is assumed if left out.',
    unit: 'mm',
    minimum: 0,
    maximum: 50,
    example: 2,
    optional: true,
  })
  readingMm?: number;
}

/** The same with nothing left out. */
export class CompleteEndUncertaintyDto extends answerOf(EndUncertaintyDto) {}

/** One end of a bike that is not stored: the unit, what stands on it and the air around. */
export class SpringEndDto {
  @PartField({ description: 'The fork or shock.', type: () => UnitFiguresDto })
  unit: UnitFiguresDto;

  @NumberField({
    description: 'Mass that stands on the spring of this end.',
    unit: 'kg',
    minimum: 1,
    maximum: 300,
    example: 35.5,
  })
  sprungMassKg: number;

  @NumberField({
    description: 'Head angle; needed for a fork.',
    unit: '°',
    minimum: 45,
    maximum: 90,
    example: 64,
    optional: true,
  })
  headAngleDeg?: number;

  @PartsField({
    description: 'Leverage ratio over shock travel, from 0 to the stroke; needed for a shock.',
    type: () => LeverageRowDto,
    maxItems: 100,
    optional: true,
  })
  leverageTable?: LeverageRowDto[];

  @PartField({ description: 'The air around; sea level if left out.', type: () => AirDto, optional: true })
  air?: AirDto;

  @PartField({
    description: 'Standard uncertainties; those left out are assumed.',
    type: () => EndUncertaintyDto,
    optional: true,
  })
  uncertainty?: EndUncertaintyDto;
}

/** A question to which the end of a bike is told along with it. */
export function withEnd<Ask extends object>(ask: new () => Ask): new () => Ask & { end: SpringEndDto } {
  class Question extends (ask as new () => object) {
    @PartField({ description: 'The end of the bike.', type: () => SpringEndDto })
    end: SpringEndDto;
  }
  return Question as new () => Ask & { end: SpringEndDto };
}
