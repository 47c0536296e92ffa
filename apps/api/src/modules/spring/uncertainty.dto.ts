import { ChoiceField, FlagField, NumberField, PartsField } from '../../platform/http/fields.js';
import { UNCERTAIN, type Uncertain } from './uncertain.js';

const any = { minimum: -1e9, maximum: 1e9 };

export class ContributionDto {
  @ChoiceField({ description: 'Whose uncertainty it is.', choices: UNCERTAIN })
  of: Uncertain;

  @NumberField({
    ...any,
    description: 'Change of the answer for one standard uncertainty more of it, in the unit of the answer.',
    unit: '1',
    example: -1.2,
  })
  effect: number;

  @NumberField({
    description: "Part of the answer's variance.",
    unit: '%',
    minimum: 0,
    maximum: 100,
    example: 62,
  })
  sharePct: number;

  @FlagField({ description: 'Whether its uncertainty, or the figure itself, is assumed.', example: true })
  assumed: boolean;
}

/** How well an answer is known, all in the unit of the answer. Linear propagation of independent errors. */
export class UncertaintyDto {
  @NumberField({ description: 'Standard uncertainty.', unit: '1', minimum: 0, maximum: 1e9, example: 1.4 })
  sd: number;

  @NumberField({ ...any, description: 'Lower end of the 90 % interval.', unit: '1', example: 28.5 })
  lower: number;

  @NumberField({ ...any, description: 'Upper end of the 90 % interval.', unit: '1', example: 33.1 })
  upper: number;

  @PartsField({
    description: 'What it comes from, greatest part first.',
    type: () => ContributionDto,
    maxItems: 10,
  })
  contributions: ContributionDto[];
}
