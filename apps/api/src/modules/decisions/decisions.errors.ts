import { InvalidField, Refusal } from '../../platform/errors/refusal.js';

export class OutcomeAlreadyEntered extends Refusal {
  constructor(outcome: string) {
    super('decision.closed', 'conflict', `The outcome is entered already: ${outcome}. It is never edited.`);
  }
}

export class NoPlanOfBike extends InvalidField {
  constructor(testPlanId: string) {
    super('decision.no-plan', 'testPlanId', testPlanId, 'a test plan that tries set-ups of this bike');
  }
}
