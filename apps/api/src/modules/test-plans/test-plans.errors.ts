import { InvalidField, Refusal } from '../../platform/errors/refusal.js';

export class PlaceUnclear extends InvalidField {
  constructor() {
    super('test-plan.place-unclear', 'trackId', null, 'given, or sessionId instead');
  }
}

export class SizeUnclear extends InvalidField {
  constructor(given: number | null) {
    super(
      'test-plan.size-unclear',
      'runsAnArm',
      given,
      'given, or differenceToTellPct instead: one of the two',
    );
  }
}

export class TooManyRuns extends InvalidField {
  constructor(field: string, given: number, runsAnArm: number | null, most: number) {
    const asked = runsAnArm === null ? '' : `; this asks for ${runsAnArm} of each arm by each rider`;
    super(
      'test-plan.too-many-runs',
      field,
      given,
      `such that a rider rides at most ${most} counted runs${asked}`,
    );
  }
}

export class ScatterUnknown extends InvalidField {
  constructor(given: number) {
    super(
      'test-plan.scatter-unknown',
      'differenceToTellPct',
      given,
      "absent until the team's scatter between runs is known from timed sessions: give runsAnArm",
    );
  }
}

export class PlanClosed extends Refusal {
  constructor() {
    super('test-plan.closed', 'conflict', 'This plan is closed: nothing more is attached to it.');
  }
}

export class BlindToRider extends Refusal {
  constructor() {
    super(
      'test-plan.blind',
      'conflict',
      'This plan is blind: log its runs for it, or let a mechanic attach this one.',
    );
  }
}

export class MovedOn extends Refusal {
  constructor(ridden: number, next: number) {
    super(
      'test-plan.moved-on',
      'conflict',
      `This run was ridden at place ${ridden} of the order, and the rider's next is place ${next}: runs were logged or voided meanwhile. Log it as a run without the plan, or discard it.`,
    );
  }
}

export class NothingLeft extends Refusal {
  constructor() {
    super('test-plan.nothing-left', 'conflict', 'This rider has ridden every run of the plan.');
  }
}

export class RunNotOfPlan extends InvalidField {
  constructor(field: 'runId' | 'sessionId', given: string, allowed: string) {
    super('test-plan.run-does-not-fit', field, given, allowed);
  }
}

export class RiderNotOfPlan extends InvalidField {
  constructor(riderId: string | null) {
    super('test-plan.not-a-rider', 'riderId', riderId, 'a rider of this plan');
  }
}
