import { NumberField } from '../../platform/http/fields.js';

/** What braking needs to know of rider and bike together. */
export class BrakingFiguresDto {
  @NumberField({ description: 'Rider and bike.', unit: 'kg', minimum: 20, maximum: 300, example: 99.5 })
  totalMassKg: number;

  @NumberField({ description: 'Wheelbase.', unit: 'mm', minimum: 700, maximum: 1_800, example: 1_250 })
  wheelbaseMm: number;

  @NumberField({
    description: 'Height of the centre of mass of rider and bike above the ground.',
    unit: 'mm',
    minimum: 300,
    maximum: 2_000,
    example: 1_050,
  })
  centreOfMassHeightMm: number;

  @NumberField({
    description: 'Distance of the centre of mass ahead of the rear contact.',
    unit: 'mm',
    minimum: 50,
    maximum: 1_700,
    example: 520,
  })
  centreOfMassToRearMm: number;

  @NumberField({
    description: 'Front mass that does not stand on the spring.',
    unit: 'kg',
    minimum: 0,
    maximum: 20,
    example: 4.3,
  })
  frontUnsprungMassKg: number;
}
