import { ChoiceField, NumberField, TextField } from '../../platform/http/fields.js';
import { ENDS, type End } from '../suspension/end-inputs.js';

const CHANGED_FIGURES = ['unit', 'pressurePsi', 'spacers', 'reboundClicks', 'compressionClicks'] as const;
export type ChangedFigure = (typeof CHANGED_FIGURES)[number];

const figure = { unit: "the figure's own", minimum: 0, maximum: 600, nullable: true };

/** One figure that a decision changed. */
export class SetupChangeDto {
  @ChoiceField({ description: 'Which end.', choices: ENDS })
  end: End;

  @ChoiceField({
    description: "Which figure; 'unit': another fork or shock, or one put in or taken out.",
    choices: CHANGED_FIGURES,
    example: 'spacers',
  })
  figure: ChangedFigure;

  @NumberField({ ...figure, description: 'Before; null: not noted, or another unit.', example: 2 })
  from: number | null;

  @NumberField({ ...figure, description: 'After; null: not noted, or another unit.', example: 3 })
  to: number | null;

  @TextField({ description: 'The same in words, but for the end.', maxLength: 100, example: '2 → 3 spacers' })
  inWords: string;
}
