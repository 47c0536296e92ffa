import { HEAT_CAPACITY_RATIO, type Chamber } from './chamber.js';

/**
 * Constants of a chamber whose gas exchanges heat with its wall: docs/equations/spring.md#thermal.
 * dT/dt = (T_w − T)/τ + (γ − 1)·(T/V)·a·v and p = (p₀V₀/T_w)·T/V.
 */
export interface ThermalChamber {
  readonly volume: number;
  readonly area: number;
  /** p₀V₀/T_w, J/K: amount of gas times the gas constant. */
  readonly gasConstant: number;
  readonly wallTemperature: number;
  /** 1/τ, 1/s; 0 where the temperature is held or no heat passes. */
  readonly exchangeRate: number;
  /** γ − 1, or 0 where the temperature is held at the wall's. */
  readonly heating: number;
}

/** Constants of a chamber filled at the wall temperature, K; by branch for τ = 0 and τ = ∞. */
export function thermalChamber(chamber: Chamber, wallTemperature: number): ThermalChamber {
  const { volume, area, pressure, thermalTime } = chamber;
  const isHeld = thermalTime === 0;
  return {
    volume,
    area,
    gasConstant: (pressure * volume) / wallTemperature,
    wallTemperature,
    exchangeRate: isHeld ? 0 : 1 / thermalTime,
    heating: isHeld ? 0 : HEAT_CAPACITY_RATIO - 1,
  };
}

/** Whether the chamber's temperature changes at all during a hit. */
export function isTemperatureFree(chamber: Chamber): boolean {
  return chamber.thermalTime !== 0 && chamber.area !== 0;
}
