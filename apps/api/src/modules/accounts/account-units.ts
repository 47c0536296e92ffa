export const PRESSURE_UNITS = ['psi', 'bar'] as const;
export const MASS_UNITS = ['kg', 'lb'] as const;
export const TEMPERATURE_UNITS = ['°C', '°F'] as const;

/** The units in which a person reads and types. */
export interface AccountUnits {
  readonly pressure: (typeof PRESSURE_UNITS)[number];
  readonly mass: (typeof MASS_UNITS)[number];
  readonly temperature: (typeof TEMPERATURE_UNITS)[number];
}
