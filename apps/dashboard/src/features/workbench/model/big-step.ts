import { rounded } from '../../../shared/format/units.js';
import { isSameFill, type Fill } from './fill.js';

/**
 * Largest change ridden at once: a tenth of the pressure, which moves sag by some two per cent of the stroke, and one
 * spacer (common practice, no source).
 */
const LARGEST_PRESSURE_SHARE = 0.1;
const LARGEST_SPACER_CHANGE = 1;
/** Below it a tenth of the pressure would be less than a hand gauge can set, psi (common practice, no source). */
const SMALLEST_PRESSURE_STEP_PSI = 2;

/** Set-ups to ride one after another from now to the proposal, which is the last; pressures between are those of a stepper. */
export function ridingSteps(now: Fill, proposed: Fill): readonly Fill[] {
  if (isSameFill(now, proposed)) return [];
  const pressureChange = proposed.pressurePsi - now.pressurePsi;
  const spacerChange = proposed.spacers - now.spacers;
  const largest = Math.max(
    SMALLEST_PRESSURE_STEP_PSI,
    LARGEST_PRESSURE_SHARE * Math.min(now.pressurePsi, proposed.pressurePsi),
  );
  const count = Math.max(
    1,
    Math.ceil(Math.abs(pressureChange) / largest),
    Math.ceil(Math.abs(spacerChange) / LARGEST_SPACER_CHANGE),
  );
  const between = Array.from({ length: count - 1 }, (_, i) => ({
    pressurePsi: rounded('psi', now.pressurePsi + (pressureChange * (i + 1)) / count, 'step'),
    spacers: Math.round(now.spacers + (spacerChange * (i + 1)) / count),
  }));
  return [...between, proposed];
}
