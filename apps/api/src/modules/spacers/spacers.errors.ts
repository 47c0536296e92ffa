import { InvalidField, Refusal } from '../../platform/errors/refusal.js';

export class StockShort extends Refusal {
  constructor(wanted: number, inStock: number) {
    super(
      'spacers.short',
      'conflict',
      `${wanted} spacers are wanted, and ${inStock} lie in stock. If there are more, enter what you have counted first.`,
    );
  }
}

export class NothingMoved extends InvalidField {
  constructor(spacers: number) {
    super('spacers.nothing-moved', 'spacers', spacers, 'at least 1; only a count may find none');
  }
}

export class AlreadyReversed extends Refusal {
  constructor() {
    super(
      'spacers.already-reversed',
      'conflict',
      'The movement is reversed already, or reverses one itself.',
    );
  }
}
