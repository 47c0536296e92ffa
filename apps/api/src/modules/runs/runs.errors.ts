import { InvalidField, Refusal } from '../../platform/errors/refusal.js';

export class ReadingBeyondStroke extends InvalidField {
  constructor(end: string, field: 'travelUsedMm' | 'travelLeftMm', given: number, strokeMm: number) {
    super(
      'run.reading-beyond-stroke',
      `${end}.${field}`,
      given,
      `from 0 to the stroke of this ${end}, ${strokeMm} mm`,
    );
  }
}

export class UsedAndLeftDisagree extends InvalidField {
  constructor(end: string, given: number, expectedMm: number) {
    super(
      'run.used-and-left-disagree',
      `${end}.travelLeftMm`,
      given,
      `${expectedMm} mm, the stroke less travelUsedMm; or leave one of the two out`,
    );
  }
}

export class NoSuchSection extends InvalidField {
  constructor(index: number, given: string, track: { name: string; sections: readonly string[] }) {
    const known = track.sections.length === 0 ? '; it has none' : `: ${track.sections.join(', ')}`;
    super(
      'run.no-such-section',
      `sectionTimes.${index}.section`,
      given,
      `a section of ${track.name}${known}`,
    );
  }
}

export class SectionTwice extends InvalidField {
  constructor(index: number, given: string) {
    super('run.section-twice', `sectionTimes.${index}.section`, given, 'each section once');
  }
}

export class SectionsBeyondTime extends InvalidField {
  constructor(sumS: number, timeS: number) {
    super(
      'run.sections-beyond-time',
      'sectionTimes',
      Number(sumS.toFixed(1)),
      `together at most ${timeS} s, the time of the run`,
    );
  }
}

export class NoShockToRead extends InvalidField {
  constructor(given: unknown) {
    super('run.no-shock', 'shock', given, 'absent: this set-up has no shock');
  }
}

export class SessionUnclear extends InvalidField {
  constructor() {
    super('run.session-unclear', 'sessionId', null, 'given, or trackId and day instead');
  }
}

export class SetupOfOtherBike extends InvalidField {
  constructor(setupId: string) {
    super('run.setup-of-other-bike', 'setupId', setupId, 'a set-up of this bike');
  }
}

export class NoSetupYet extends InvalidField {
  constructor() {
    super(
      'run.no-setup',
      'setupId',
      null,
      'given: this bike has no set-up yet; enter its pressures and spacers first',
    );
  }
}

export class NotOwnRun extends Refusal {
  constructor() {
    super('run.not-own', 'forbidden', 'A rider logs their own runs only.');
  }
}

export class AlreadyVoid extends Refusal {
  constructor() {
    super('run.already-void', 'conflict', 'This run is void already, with the reason that was given then.');
  }
}

export class NotVoid extends Refusal {
  constructor() {
    super('run.not-void', 'conflict', 'This run is not void.');
  }
}
