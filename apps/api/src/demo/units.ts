import { FORKS } from './forks.js';
import { SHOCKS } from './shocks.js';

/** The invented units: measured, entered and assumed figures; one has no limits entered. */
export const UNITS = { ...FORKS, ...SHOCKS };

export type UnitKey = keyof typeof UNITS;
