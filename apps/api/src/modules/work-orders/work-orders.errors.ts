import { Refusal } from '../../platform/errors/refusal.js';

export class NoWork extends Refusal {
  constructor() {
    super(
      'work-order.nothing-to-do',
      'conflict',
      'The bike is as this set-up says already: nothing is to be done.',
    );
  }
}

export class OrderExists extends Refusal {
  constructor() {
    super('work-order.exists', 'conflict', 'There is a work order for this set-up already.');
  }
}
