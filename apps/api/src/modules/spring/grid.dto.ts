import { ChoiceField, NumberField, NumbersField, PartsField } from '../../platform/http/fields.js';
import { EngineAnswerDto, HeightField } from './answer.dto.js';
import { withEnd } from './end.dto.js';
import { HEIGHT_ENDS } from './hits.dto.js';
import { SETTLED } from './sag.dto.js';

const MOST_SPACERS = 11;
const MOST_PRESSURES = 100;
const MOST_HEIGHTS = 5;

export class GridAskDto {
  @NumbersField({
    description: 'Spacer counts to try.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 30,
    example: 2,
    minItems: 1,
    maxItems: MOST_SPACERS,
  })
  spacers: number[];

  @NumbersField({
    description: 'Air pressures to try, rising.',
    unit: 'psi',
    minimum: 1,
    maximum: 600,
    example: 71,
    minItems: 1,
    maxItems: MOST_PRESSURES,
  })
  pressuresPsi: number[];

  @NumbersField({
    description: 'Drops to flat whose travel is wanted for each; none if left out.',
    unit: 'm',
    minimum: 0,
    maximum: 20,
    example: 0.7,
    minItems: 0,
    maxItems: MOST_HEIGHTS,
    optional: true,
  })
  heightsM?: number[];
}

export class GridQuestionDto extends withEnd(GridAskDto) {}

export class GridCellDto {
  @NumberField({ description: 'Spacers.', unit: '1', integer: true, minimum: 0, maximum: 30, example: 2 })
  spacers: number;

  @NumberField({ description: 'Air pressure, gauge.', unit: 'psi', minimum: 1, maximum: 600, example: 71 })
  pressurePsi: number;

  @ChoiceField({ description: 'Where the spring settles.', choices: SETTLED })
  sagStatus: (typeof SETTLED)[number];

  @NumberField({ description: 'Sag, of the stroke.', unit: '%', minimum: 0, maximum: 100, example: 18.1 })
  sagPct: number;

  @ChoiceField({ description: 'Whether there is a drop that just bottoms out.', choices: HEIGHT_ENDS })
  bottomingStatus: (typeof HEIGHT_ENDS)[number];

  @HeightField('Drop to flat that just bottoms out; null where there is none.', 0.83, { nullable: true })
  bottomingHeightM: number | null;

  @NumbersField({
    description: 'Travel used by each of the drops asked for; the stroke where it bottoms out.',
    unit: 'mm',
    minimum: 0,
    maximum: 300,
    example: 148,
    minItems: 0,
    maxItems: MOST_HEIGHTS,
  })
  travelsMm: number[];
}

export class GridAnswerDto extends EngineAnswerDto {
  @PartsField({
    description: 'Every spacer count with every pressure, in the order asked.',
    type: () => GridCellDto,
    maxItems: MOST_SPACERS * MOST_PRESSURES,
  })
  cells: GridCellDto[];
}
