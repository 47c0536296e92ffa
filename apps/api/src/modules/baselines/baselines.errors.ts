import { Refusal, type FieldProblem } from '../../platform/errors/refusal.js';

export class NewerBaseline extends Refusal {
  constructor() {
    super(
      'baseline.superseded',
      'conflict',
      'Something behind this baseline has changed since: look at the new one before you take it.',
    );
  }
}

export class NothingToTake extends Refusal {
  constructor() {
    super('baseline.nothing-to-take', 'conflict', 'This baseline recommends no change, or nothing at all.');
  }
}

export class NotAllTaken extends Refusal {
  constructor(refused: readonly FieldProblem[]) {
    super('baseline.not-all-taken', 'conflict', 'Not every baseline can be taken, so none was.', refused);
  }
}
