import type { End, EndFill, FilledAt } from '../suspension/end-inputs.js';
import type { SetupFigures } from './setup-figures.js';

/** The unit that the set-up was for at one end; null where it had none. */
export const unitIdAt = (end: End, setup: SetupFigures): string | null =>
  end === 'fork' ? setup.forkUnitId : setup.shockUnitId;

/** What the set-up fills one end with. */
export const fillOf = (end: End, setup: SetupFigures): EndFill =>
  end === 'fork'
    ? { pressure: setup.forkPressure, spacers: setup.forkSpacers }
    : { pressure: setup.shockPressure ?? 0, spacers: setup.shockSpacers ?? 0 };

/** Where the set-up was pumped, if that was recorded. */
export const filledAtOf = (setup: SetupFigures): FilledAt | null =>
  setup.filledAltitude === null || setup.filledTemperature === null
    ? null
    : { altitude: setup.filledAltitude, temperature: setup.filledTemperature };
