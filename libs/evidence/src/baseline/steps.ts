import { gaugePascal, type GaugePascal } from '@loamledger/units';
import { nearest } from './nearest.js';
import { isWithinLimits, type BaselineCandidate, type UnitLimits } from './candidate.js';

/** One set-up to ride before the next step is taken. */
export interface SetUpStep {
  pressurePa: GaugePascal;
  spacers: number;
}

/**
 * Largest change ridden at once: a tenth of the pressure, which moves sag by some two per cent of the stroke, and
 * one spacer (common practice, no source).
 */
const LARGEST_PRESSURE_SHARE = 0.1;
const LARGEST_SPACER_CHANGE = 1;
/** Pa; below it a tenth of the pressure would be less than a hand gauge can set (2 psi; common practice, no source). */
const SMALLEST_PRESSURE_STEP_PA = 13_790;

/**
 * Set-ups to ride one after another on the way from the current one to the target, the target last; gauge Pa and
 * spacers. Pressure and spacers change in step. Every one lies inside the limits, also when the current one does not.
 * Between, pressures are those of the candidates where one with that spacer count is nearest. Empty when nothing changes.
 */
export function stepsTowards(
  current: SetUpStep | undefined,
  target: BaselineCandidate,
  candidates: readonly BaselineCandidate[],
  limits: UnitLimits,
): SetUpStep[] {
  const last: SetUpStep = { pressurePa: target.pressurePa, spacers: target.spacers };
  if (current === undefined) return [last];
  const pressureChange = target.pressurePa - current.pressurePa;
  const spacerChange = target.spacers - current.spacers;
  if (pressureChange === 0 && spacerChange === 0) return [];
  const pressureStep = Math.max(
    SMALLEST_PRESSURE_STEP_PA,
    LARGEST_PRESSURE_SHARE * Math.min(current.pressurePa, target.pressurePa),
  );
  const count = Math.max(
    1,
    Math.ceil(Math.abs(pressureChange) / pressureStep),
    Math.ceil(Math.abs(spacerChange) / LARGEST_SPACER_CHANGE),
  );
  const steps: SetUpStep[] = [];
  for (let i = 1; i < count; i += 1) {
    const spacers = Math.min(limits.maxSpacers, Math.round(current.spacers + (spacerChange * i) / count));
    const pressure = current.pressurePa + (pressureChange * i) / count;
    steps.push({ pressurePa: nearestPressure(pressure, spacers, candidates, limits), spacers });
  }
  return [...steps, last];
}

function nearestPressure(
  pressure: number,
  spacers: number,
  candidates: readonly BaselineCandidate[],
  limits: UnitLimits,
): GaugePascal {
  const inside = Math.min(limits.maxPressurePa, Math.max(limits.minPressurePa, pressure));
  const near = candidates.filter(
    (candidate) =>
      candidate.spacers === spacers &&
      isWithinLimits(candidate, limits) &&
      Math.abs(candidate.pressurePa - inside) <= SMALLEST_PRESSURE_STEP_PA / 2,
  );
  return (
    nearest(near, (candidate) => Math.abs(candidate.pressurePa - inside))?.pressurePa ?? gaugePascal(inside)
  );
}
