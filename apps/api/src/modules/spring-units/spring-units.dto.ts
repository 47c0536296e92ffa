import { answerOf } from '../../platform/http/answer.js';
import { IdField, NumberField, PartField, TextField } from '../../platform/http/fields.js';
import { pageOf } from '../../platform/http/page.js';
import { VersionField } from '../../platform/http/version-field.js';
import { UnitFiguresDto, UnitSourcesDto } from './unit-figures.dto.js';

export class SpringUnitInputDto extends UnitFiguresDto {
  @TextField({ description: 'Name.', maxLength: 80, example: 'Fork of bike A' })
  name: string;

  @PartField({ description: 'Where each figure comes from.', type: () => UnitSourcesDto, optional: true })
  sources?: UnitSourcesDto;

  @NumberField({
    description: "Least air pressure of the unit's manual; null: not entered, so nothing is recommended.",
    unit: 'psi',
    minimum: 1,
    maximum: 600,
    example: 40,
    optional: true,
    nullable: true,
  })
  minPressurePsi?: number | null;

  @NumberField({
    description: "Highest air pressure of the unit's manual; null: not entered, so nothing is recommended.",
    unit: 'psi',
    minimum: 1,
    maximum: 600,
    example: 120,
    optional: true,
    nullable: true,
  })
  maxPressurePsi?: number | null;

  @NumberField({
    description: 'Most spacers that may go in; null: not entered, so nothing is recommended.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 30,
    example: 5,
    optional: true,
    nullable: true,
  })
  maxSpacers?: number | null;
}

export class SpringUnitDto extends answerOf(SpringUnitInputDto) {
  @IdField({ description: 'The unit.' })
  id: string;

  @NumberField({
    description: 'Spacers of its size in stock, as their movements make them.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e9,
    example: 4,
  })
  spacersInStock: number;

  @VersionField()
  version: number;
}

export class SpringUnitPageDto extends pageOf(SpringUnitDto) {}
