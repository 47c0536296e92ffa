import {
  absolutePascal,
  celsiusFromKelvin,
  gaugePascal,
  kelvin,
  kelvinFromCelsius,
  type AbsolutePascal,
  type GaugePascal,
  type Kelvin,
} from '@loamledger/units';
import { requireNumber } from '../numerics/input-error.js';

// Defining constants of the US Standard Atmosphere 1976 [ussa1976], lowest layer.
const EARTH_RADIUS = 6_356_766; // m
const SEA_LEVEL_TEMPERATURE = 288.15; // K
const SEA_LEVEL_PRESSURE = 101_325; // Pa
const LAPSE_RATE = 0.0065; // K/m
const STANDARD_GRAVITY = 9.80665; // m/s²
const MOLAR_MASS = 0.0289644; // kg/mol
const GAS_CONSTANT = 8.31432; // J/(mol K), as that standard has it
const TOP_OF_LAYER = 11_000; // m, geopotential
/** Lowest land on Earth lies about 430 m below the sea; some margin, m. */
const LOWEST_ALTITUDE = -1000;

/**
 * Pressure (Pa) and temperature (K) of the standard atmosphere at an altitude.
 *
 * H = r·Z/(r + Z), T = T₀ − L·H, p = p₀·(T/T₀)^(g₀M/(R*L)); docs/equations/ambient.md#atmosphere.
 * @param altitude geometric altitude Z above sea level, m; −1000…11,000.
 * @throws SpringInputError outside that range. Source: [ussa1976].
 * @example standardAtmosphere(1000).pressure // 89 876 Pa
 */
export function standardAtmosphere(altitude: number): {
  readonly pressure: AbsolutePascal;
  readonly temperature: Kelvin;
} {
  requireNumber('altitude', altitude, 'm', { atLeast: LOWEST_ALTITUDE, atMost: TOP_OF_LAYER });
  const geopotential = (EARTH_RADIUS * altitude) / (EARTH_RADIUS + altitude);
  const temperature = SEA_LEVEL_TEMPERATURE - LAPSE_RATE * geopotential;
  const exponent = (STANDARD_GRAVITY * MOLAR_MASS) / (GAS_CONSTANT * LAPSE_RATE);
  return {
    pressure: absolutePascal(SEA_LEVEL_PRESSURE * (temperature / SEA_LEVEL_TEMPERATURE) ** exponent),
    temperature: kelvin(temperature),
  };
}

/**
 * Air temperature that is assumed where nobody has read one, K: the standard atmosphere's at the altitude, to the whole
 * degree Celsius that a person reads, so that every page computes with the figure it shows.
 * @param altitude m above sea level; −1000…11,000.
 * @throws SpringInputError outside that range.
 */
export const assumedTemperature = (altitude: number): Kelvin =>
  kelvinFromCelsius(Math.round(celsiusFromKelvin(standardAtmosphere(altitude).temperature)));

/** Air around a bike: absolute pressure and temperature. */
export interface Ambient {
  readonly pressure: AbsolutePascal;
  readonly temperature: Kelvin;
}

/**
 * Gauge pressure that an untouched spring shows at a venue, Pa.
 *
 * p_g2 = (p_g1 + p_a1)·T₂/T₁ − p_a2: the gas in it is the same, its volume too; docs/equations/ambient.md#untouched.
 * Can be negative for a nearly empty spring. Ideal gas; error below 0.2 % between 0 and 40 °C.
 */
export function pressureAtVenue(gauge: GaugePascal, here: Ambient, venue: Ambient): GaugePascal {
  return gaugePascal(((gauge + here.pressure) * venue.temperature) / here.temperature - venue.pressure);
}
