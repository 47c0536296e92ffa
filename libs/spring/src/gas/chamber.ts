/**
 * One air chamber of a spring: docs/equations/spring.md#chamber. Travel shrinks a chamber with positive area
 * and lets one with negative area (the negative chamber) grow, so that all three have one set of formulas.
 */
export interface Chamber {
  /** Volume at full extension, m³. */
  readonly volume: number;
  /** Area by which its volume shrinks with travel, m²; negative if it grows. */
  readonly area: number;
  /** Absolute pressure at full extension, Pa. */
  readonly pressure: number;
  /** Thermal time constant, s: 0 isothermal, Infinity adiabatic. */
  readonly thermalTime: number;
}

/** Ratio of the specific heats of dry air, 1; 1.400 near room temperature [lemmon2000]. */
export const HEAT_CAPACITY_RATIO = 1.4;
/** Polytropic exponent of a change so slow that the gas keeps the wall temperature, 1. */
export const ISOTHERMAL = 1;

/** Volume of the chamber at a travel, m³: V(s) = V₀ − a·s. */
export function volumeAt(chamber: Chamber, travel: number): number {
  return chamber.volume - chamber.area * travel;
}

/** Absolute pressure of the chamber at a travel, Pa: p(s) = p₀·(V₀/V(s))ⁿ with polytropic exponent n. */
export function pressureAt(chamber: Chamber, travel: number, exponent: number): number {
  const ratio = chamber.volume / volumeAt(chamber, travel);
  return chamber.pressure * (exponent === ISOTHERMAL ? ratio : ratio ** exponent);
}

/** Force of the chamber against compression above ambient, N: F = (p(s) − p_a)·a. */
export function chamberForce(chamber: Chamber, ambient: number, travel: number, exponent: number): number {
  return (pressureAt(chamber, travel, exponent) - ambient) * chamber.area;
}

/** Stiffness of the chamber, N/m: dF/ds = n·p(s)·a²/V(s), never negative. */
export function chamberStiffness(chamber: Chamber, travel: number, exponent: number): number {
  return (exponent * pressureAt(chamber, travel, exponent) * chamber.area ** 2) / volumeAt(chamber, travel);
}

/**
 * Energy taken up by the chamber from full extension to a travel, J, less the work of the ambient air:
 * E = p₀V₀·ln(V₀/V) − p_a·a·s for n = 1, E = p₀V₀·((V₀/V)ⁿ⁻¹ − 1)/(n − 1) − p_a·a·s otherwise.
 */
export function chamberEnergy(chamber: Chamber, ambient: number, travel: number, exponent: number): number {
  const ratio = chamber.volume / volumeAt(chamber, travel);
  const factor = exponent === ISOTHERMAL ? Math.log(ratio) : (ratio ** (exponent - 1) - 1) / (exponent - 1);
  return chamber.pressure * chamber.volume * factor - ambient * chamber.area * travel;
}
