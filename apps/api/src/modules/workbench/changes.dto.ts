import { IdField, PartField, TextField } from '../../platform/http/fields.js';
import { EndSetupInputDto } from '../setups/setups.dto.js';

/** A change that was tried at the workbench and is now made. */
export class ChangeInputDto {
  @IdField({ description: 'The bike.' })
  bikeId: string;

  @IdField({
    description: 'The set-up that the change started from; null for a bike without one.',
    nullable: true,
  })
  setupId: string | null;

  @IdField({ description: 'The track it is meant for, if for one.', optional: true, nullable: true })
  trackId?: string | null;

  @PartField({ description: 'The fork; pressure at the track.', type: () => EndSetupInputDto })
  fork: EndSetupInputDto;

  @PartField({
    description: 'The shock; null for a bike without one.',
    type: () => EndSetupInputDto,
    optional: true,
    nullable: true,
  })
  shock?: EndSetupInputDto | null;

  @TextField({ description: 'Why it is changed.', maxLength: 1_000, example: 'Stay higher under braking.' })
  reason: string;

  @IdField({
    description: 'The test plan whose comparison it rests on, if on one.',
    optional: true,
    nullable: true,
  })
  testPlanId?: string | null;

  @TextField({ description: 'Note.', minLength: 0, maxLength: 2_000, example: 'New seals.', optional: true })
  note?: string;
}
