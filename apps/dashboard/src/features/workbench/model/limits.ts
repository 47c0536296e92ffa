import type { BikeEnd } from '../api/bike-ends.js';
import type { FillField } from './fill.js';

interface Bounds {
  /** Null where none was entered. */
  readonly least: number | null;
  readonly most: number | null;
}

/** What the unit's maker allows, as entered by the team. */
export type Limits = Readonly<Record<FillField, Bounds>>;

export const limitsOf = ({ minPressurePsi, maxPressurePsi, maxSpacers }: BikeEnd['limits']): Limits => ({
  pressurePsi: { least: minPressurePsi, most: maxPressurePsi },
  spacers: { least: 0, most: maxSpacers },
});

/** Without all its limits a unit gets figures and curves, but no recommendation. */
export const hasAllLimits = ({ minPressurePsi, maxPressurePsi, maxSpacers }: BikeEnd['limits']) =>
  minPressurePsi !== null && maxPressurePsi !== null && maxSpacers !== null;

/** Whether a pressure may be recommended. */
export const isAllowedPressure = ({ pressurePsi: { least, most } }: Limits, psi: number) =>
  (least === null || psi >= least) && (most === null || psi <= most);
