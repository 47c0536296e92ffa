import { Refusal } from '../../platform/errors/refusal.js';

export class HiddenUntilClosed extends Refusal {
  constructor() {
    super(
      'blind-plan.hidden',
      'conflict',
      'This bike rides in a blind test plan: its riders see its set-ups when the plan is closed.',
    );
  }
}
