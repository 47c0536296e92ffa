import { Refusal } from '../../platform/errors/refusal.js';

export class OutcomeAlreadyEntered extends Refusal {
  constructor(outcome: string) {
    super('decision.closed', 'conflict', `The outcome is entered already: ${outcome}. It is never edited.`);
  }
}
