import { InvalidField, Refusal } from '../../platform/errors/refusal.js';

export class StaleChange extends Refusal {
  constructor() {
    super(
      'change.stale',
      'conflict',
      "The bike's set-up was changed since you started. Look at the one that is in it now, then decide.",
    );
  }
}

export class NoSuchEnd extends InvalidField {
  constructor(end: string) {
    super('bike.no-such-end', 'end', end, 'an end that this bike has');
  }
}
