import { InvalidField, Refusal } from '../../platform/errors/refusal.js';

export class PressureOutsideLimits extends InvalidField {
  constructor(end: string, pressurePsi: number, minPsi: number | null, maxPsi: number | null) {
    const allowed = [
      minPsi === null ? '' : `at least ${minPsi} psi`,
      maxPsi === null ? '' : `at most ${maxPsi} psi`,
    ];
    super(
      'setup.pressure-outside-limits',
      `${end}.pressurePsi`,
      pressurePsi,
      `${allowed.filter(Boolean).join(' and ')}, the limits entered for this unit`,
    );
  }
}

export class TooManySpacers extends InvalidField {
  constructor(end: string, spacers: number, maxSpacers: number) {
    super(
      'setup.too-many-spacers',
      `${end}.spacers`,
      spacers,
      `0 to ${maxSpacers}, the limit entered for this unit`,
    );
  }
}

export class ShockMismatch extends InvalidField {
  constructor(hasShock: boolean, given: unknown) {
    super(
      'setup.shock-mismatch',
      'shock',
      given,
      hasShock ? 'given: the bike has a shock' : 'absent: the bike has no shock',
    );
  }
}

export class FilledHalfKnown extends InvalidField {
  constructor(given: unknown) {
    super(
      'setup.filled-half-known',
      'filledTemperatureC',
      given,
      'given together with filledAltitudeM, or neither',
    );
  }
}

export class NothingToRestore extends Refusal {
  constructor() {
    super('setup.already-current', 'conflict', 'This is the set-up that the bike has now.');
  }
}
