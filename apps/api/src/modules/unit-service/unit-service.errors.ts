import { InvalidField, Refusal } from '../../platform/errors/refusal.js';

export class DayToCome extends InvalidField {
  constructor(day: string) {
    super('service.day-to-come', 'day', day, 'a day that has begun somewhere on Earth');
  }
}

export class HoursOfNothing extends InvalidField {
  constructor(kind: string, hours: unknown) {
    super(
      'service.hours-mismatch',
      'ridingHours',
      hours,
      kind === 'hours' ? 'given: the entry is about riding' : 'absent: a service takes no riding',
    );
  }
}

export class AlreadyTakenBack extends Refusal {
  constructor() {
    super(
      'service.already-taken-back',
      'conflict',
      'The entry is taken back already, or takes one back itself.',
    );
  }
}

/** In an archive: an entry takes back one of its own kind, and none that takes one back itself. */
export class TakesBackAnother extends InvalidField {
  constructor(id: unknown) {
    super(
      'service.takes-back-another',
      'takesBackId',
      id,
      'an entry of the same kind that stands for itself',
    );
  }
}
