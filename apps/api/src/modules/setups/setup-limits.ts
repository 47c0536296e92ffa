import { airSpring } from '@loamledger/spring';
import { absolutePascal, gaugePascal, kelvin, psiFromGaugePascal } from '@loamledger/units';
import { engineUnit } from '../spring-units/engine-unit.js';
import { asking, type EngineFields } from '../spring-units/engine-refusal.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { PressureOutsideLimits, TooManySpacers } from './setups.errors.js';

/** Gauge reading tolerance when a pressure is held against a limit, Pa: rounding of the conversion, no more. */
const ROUNDING = 1e-3;

/**
 * Refuses a fill that the unit's limits or the unit itself forbid.
 * @throws PressureOutsideLimits, TooManySpacers, or InvalidField for what the engine refuses.
 */
export function refuseFillOutsideLimits(
  end: 'fork' | 'shock',
  unit: SpringUnit,
  fill: { pressure: number; spacers: number },
): void {
  const { minPressure, maxPressure, maxSpacers } = unit;
  if (
    (minPressure !== null && fill.pressure < minPressure - ROUNDING) ||
    (maxPressure !== null && fill.pressure > maxPressure + ROUNDING)
  ) {
    throw new PressureOutsideLimits(end, psi(fill.pressure), psiOrNull(minPressure), psiOrNull(maxPressure));
  }
  if (maxSpacers !== null && fill.spacers > maxSpacers) {
    throw new TooManySpacers(end, fill.spacers, maxSpacers);
  }
  asking('setup.impossible-fill', fillFields(end), () =>
    airSpring(engineUnit(unit), {
      gaugePressure: gaugePascal(fill.pressure),
      spacers: fill.spacers,
      ambientPressure: absolutePascal(101_325),
      temperature: kelvin(293.15),
    }),
  );
}

const fillFields = (end: 'fork' | 'shock'): EngineFields => ({
  'fill.gaugePressure': { field: `${end}.pressurePsi`, unit: 'psi', fromSi: psi },
  'fill.spacers': { field: `${end}.spacers`, unit: '', fromSi: (count) => count },
});

const psi = (pressure: number) => Number(psiFromGaugePascal(gaugePascal(pressure)).toFixed(2));
const psiOrNull = (pressure: number | null) => (pressure === null ? null : psi(pressure));
