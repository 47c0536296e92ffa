import { Type } from 'class-transformer';
import {
  ChoiceField,
  FlagField,
  IdField,
  IdsField,
  MomentField,
  NumberField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { PageQuery, pageOf } from '../../platform/http/page.js';
import {
  HAND_REASONS,
  MOVEMENT_REASONS,
  type HandReason,
  type MovementReason,
} from './spacer-movement.entity.js';

const MOST = 10_000;
const UNIT_KINDS = ['fork', 'shock'];
const inStock = { unit: '1', integer: true, minimum: 0, maximum: 1e9, example: 4 };
const volume = {
  description: 'Volume of one, to a tenth of a millilitre.',
  unit: 'mL',
  minimum: 0.1,
  maximum: 200,
  example: 10,
};

/** Spacers of one size, and how many lie in stock. */
export class SpacerStockDto {
  @ChoiceField({ description: 'Which units they fit.', choices: UNIT_KINDS })
  unitKind: 'fork' | 'shock';

  @NumberField(volume)
  spacerVolumeMl: number;

  @NumberField({ ...inStock, description: 'How many lie in stock.' })
  inStock: number;

  @IdsField({ description: 'The units of the team that take them.', maxItems: 100_000 })
  unitIds: string[];
}

export class SpacerStockListDto {
  @PartsField({
    description: 'Every size that a unit of the team takes or that was ever counted.',
    type: () => SpacerStockDto,
    maxItems: 100_000,
  })
  items: SpacerStockDto[];
}

export class SpacerMovementInputDto {
  @ChoiceField({ description: 'Which units they fit.', choices: UNIT_KINDS })
  unitKind: 'fork' | 'shock';

  @NumberField(volume)
  spacerVolumeMl: number;

  @ChoiceField({
    description:
      '`counted`: so many lie there; `bought` and `taken out` add to the stock, `lost` and `put in` take from it.',
    choices: HAND_REASONS,
  })
  reason: HandReason;

  @NumberField({ description: 'How many.', unit: '1', integer: true, minimum: 0, maximum: MOST, example: 4 })
  spacers: number;

  @TextField({ description: 'Note.', minLength: 0, maxLength: 1_000, example: 'New set.', optional: true })
  note?: string;
}

export class SpacerMovementDto {
  @IdField({ description: 'The movement.' })
  id: string;

  @ChoiceField({ description: 'Which units they fit.', choices: UNIT_KINDS })
  unitKind: 'fork' | 'shock';

  @NumberField(volume)
  spacerVolumeMl: number;

  @ChoiceField({ description: 'Why.', choices: MOVEMENT_REASONS })
  reason: MovementReason;

  @NumberField({
    description: 'How many more lie in stock by it; negative: fewer.',
    unit: '1',
    integer: true,
    minimum: -1e9,
    maximum: 1e9,
    example: -2,
  })
  change: number;

  @NumberField({ ...inStock, description: 'How many lay in stock after it.' })
  inStock: number;

  @TextField({ description: 'Note.', minLength: 0, maxLength: 1_000, example: 'New set.' })
  note: string;

  @MomentField({ description: 'When it was entered.', example: '2026-05-09T10:30:00Z' })
  enteredAt: string;

  @IdField({
    description: 'The account that entered it; null: brought over from an older version.',
    nullable: true,
  })
  enteredBy: string | null;

  @IdField({ description: 'The movement that it reverses; null: it stands for itself.', nullable: true })
  reversesId: string | null;

  @FlagField({ description: 'Whether it was reversed.', example: false })
  isReversed: boolean;
}

export class SpacerMovementPageDto extends pageOf(SpacerMovementDto) {}

export class SpacerMovementListQuery extends PageQuery {
  @ChoiceField({ description: 'Only of spacers for these units.', choices: UNIT_KINDS, optional: true })
  unitKind?: 'fork' | 'shock';

  @Type(() => Number)
  @NumberField({ ...volume, description: 'Only of this volume.', optional: true })
  spacerVolumeMl?: number;
}

export class ReverseInputDto {
  @TextField({ description: 'Why.', maxLength: 1_000, example: 'Counted the wrong box.' })
  note: string;
}
