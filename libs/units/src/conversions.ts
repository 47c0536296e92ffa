import type { AbsolutePascal, GaugePascal, Kelvin, Radian } from './quantity.js';

/**
 * Pascals in one pound-force per square inch: lbf = 0.45359237 kg × 9.80665 m/s², in = 0.0254 m, all exact
 * (international yard and pound agreement of 1959; standard gravity of the 3rd CGPM, 1901).
 */
export const PASCAL_PER_PSI = (0.45359237 * 9.80665) / 0.0254 ** 2;
const PASCAL_PER_BAR = 1e5;
const PASCAL_PER_HECTOPASCAL = 100;
const KILOGRAM_PER_POUND = 0.45359237;
const CELSIUS_ZERO_KELVIN = 273.15;
const DEGREES_PER_RADIAN = 180 / Math.PI;
const MILLIMETRES_PER_METRE = 1e3;
const MILLILITRES_PER_CUBIC_METRE = 1e6;
const SQUARE_MILLIMETRES_PER_SQUARE_METRE = 1e6;

/** Gauge pressure in Pa from psi. */
export const gaugePascalFromPsi = (psi: number) => (psi * PASCAL_PER_PSI) as GaugePascal;
/** Gauge pressure in psi from Pa. */
export const psiFromGaugePascal = (pressure: GaugePascal) => pressure / PASCAL_PER_PSI;
/** Gauge pressure in Pa from bar. */
export const gaugePascalFromBar = (bar: number) => (bar * PASCAL_PER_BAR) as GaugePascal;
/** Gauge pressure in bar from Pa. */
export const barFromGaugePascal = (pressure: GaugePascal) => pressure / PASCAL_PER_BAR;

/** Absolute pressure in Pa from hPa. */
export const absolutePascalFromHectopascal = (hectopascal: number) =>
  (hectopascal * PASCAL_PER_HECTOPASCAL) as AbsolutePascal;
/** Absolute pressure in hPa from Pa. */
export const hectopascalFromAbsolutePascal = (pressure: AbsolutePascal) => pressure / PASCAL_PER_HECTOPASCAL;

/** Temperature in K from °C. */
export const kelvinFromCelsius = (celsius: number) => (celsius + CELSIUS_ZERO_KELVIN) as Kelvin;
/** Temperature in °C from K. */
export const celsiusFromKelvin = (temperature: Kelvin) => temperature - CELSIUS_ZERO_KELVIN;
/** Temperature in °F from °C. */
export const fahrenheitFromCelsius = (celsius: number) => celsius * 1.8 + 32;
/** Temperature in °C from °F. */
export const celsiusFromFahrenheit = (fahrenheit: number) => (fahrenheit - 32) / 1.8;

/** Mass in lb from kg. */
export const poundsFromKilograms = (kilograms: number) => kilograms / KILOGRAM_PER_POUND;
/** Mass in kg from lb. */
export const kilogramsFromPounds = (pounds: number) => pounds * KILOGRAM_PER_POUND;

/** Length in m from mm. */
export const metresFromMillimetres = (millimetres: number) => millimetres / MILLIMETRES_PER_METRE;
/** Length in mm from m. */
export const millimetresFromMetres = (metres: number) => metres * MILLIMETRES_PER_METRE;
/** Area in m² from mm². */
export const squareMetresFromSquareMillimetres = (area: number) => area / SQUARE_MILLIMETRES_PER_SQUARE_METRE;
/** Area in mm² from m². */
export const squareMillimetresFromSquareMetres = (area: number) => area * SQUARE_MILLIMETRES_PER_SQUARE_METRE;
/** Volume in m³ from mL. */
export const cubicMetresFromMillilitres = (millilitres: number) => millilitres / MILLILITRES_PER_CUBIC_METRE;
/** Volume in mL from m³. */
export const millilitresFromCubicMetres = (volume: number) => volume * MILLILITRES_PER_CUBIC_METRE;

/** Angle in rad from degrees. */
export const radianFromDegrees = (degrees: number) => (degrees / DEGREES_PER_RADIAN) as Radian;
/** Angle in degrees from rad. */
export const degreesFromRadian = (angle: Radian) => angle * DEGREES_PER_RADIAN;
