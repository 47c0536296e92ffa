import { agrees, archived } from '../../platform/archive/archived.js';
import { message, whole } from '../../platform/archive/checks.js';
import { movementAnswer } from './spacer-answers.js';
import { SpacerMovementEntity } from './spacer-movement.entity.js';
import { SpacerMovementDto } from './spacers.dto.js';

const MOST_MOVEMENTS = 1e9;

export const SPACER_MOVEMENT_ARCHIVE = archived(SpacerMovementEntity, {
  people: ['enteredBy'],
  columns: { number: whole(1, MOST_MOVEMENTS) },
  row: message(SpacerMovementDto, (movement: SpacerMovementEntity) => movementAnswer(movement, false)),
  rules: [
    agrees('reversesId', 'unitKind'),
    agrees('reversesId', 'spacerSize'),
    ({ reason, reversesId }) =>
      (reason === 'reversed') === (reversesId !== null)
        ? []
        : [{ field: 'reversesId', given: reversesId, allowed: 'there where the reason is reversed only' }],
  ],
});
