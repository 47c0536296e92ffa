import { Refusal } from '../../platform/errors/refusal.js';

export class LookedAtTheEnd extends Refusal {
  constructor() {
    super(
      'comparison.not-yet',
      'conflict',
      'This plan is looked at once, at the end: close it first. A look in between would spend error rate that it was not planned with.',
    );
  }
}

export class BlindUntilClosed extends Refusal {
  constructor() {
    super(
      'comparison.blind',
      'conflict',
      'This plan is blind: its riders see the comparison when it is closed.',
    );
  }
}
