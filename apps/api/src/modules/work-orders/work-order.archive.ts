import { WORK_STEPS } from '@loamledger/spring';
import { agrees, archived } from '../../platform/archive/archived.js';
import { whole, word } from '../../platform/archive/checks.js';
import { ENDS } from '../suspension/end-inputs.js';
import { WorkOrderEntity } from './work-order.entity.js';
import { WorkStepEntity } from './work-step.entity.js';

const MOST_STEPS = 100;

export const WORK_ORDER_ARCHIVE = archived(WorkOrderEntity, {
  people: ['madeBy'],
  rules: [agrees('fromSetupId', 'bikeId'), agrees('toSetupId', 'bikeId')],
});

export const WORK_STEP_ARCHIVE = archived(WorkStepEntity, {
  people: ['doneBy'],
  columns: { position: whole(1, MOST_STEPS), end: word(ENDS), step: word(WORK_STEPS) },
  rules: [
    ({ doneAt, doneBy }) =>
      (doneAt === null) === (doneBy === null)
        ? []
        : [{ field: 'doneBy', given: doneBy, allowed: 'there where the step is done only' }],
  ],
});
