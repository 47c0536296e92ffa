/**
 * A number that carries its quantity in its type, so that a gauge pressure cannot be passed where an
 * absolute one is meant, nor degrees where radians are. At run time it is a plain number in the SI unit.
 */
export type Quantity<Name extends string> = number & { readonly __quantity: Name };

/** Absolute pressure, Pa; > 0. */
export type AbsolutePascal = Quantity<'absolute pressure, Pa'>;
/** Gauge pressure (above ambient), Pa; what a shock pump shows. */
export type GaugePascal = Quantity<'gauge pressure, Pa'>;
/** Thermodynamic temperature, K; > 0. */
export type Kelvin = Quantity<'temperature, K'>;
/** Angle, rad. */
export type Radian = Quantity<'angle, rad'>;

/** Marks a plain number of pascals as an absolute pressure. */
export const absolutePascal = (value: number) => value as AbsolutePascal;
/** Marks a plain number of pascals as a gauge pressure. */
export const gaugePascal = (value: number) => value as GaugePascal;
/** Marks a plain number of kelvins as a temperature. */
export const kelvin = (value: number) => value as Kelvin;
/** Marks a plain number of radians as an angle. */
export const radian = (value: number) => value as Radian;

/** Absolute pressure of a gauge reading taken where the air around has the pressure `ambient`, Pa. */
export const absoluteFromGauge = (gauge: GaugePascal, ambient: AbsolutePascal) =>
  (gauge + ambient) as AbsolutePascal;

/** Gauge reading of an absolute pressure where the air around has the pressure `ambient`, Pa. */
export const gaugeFromAbsolute = (absolute: AbsolutePascal, ambient: AbsolutePascal) =>
  (absolute - ambient) as GaugePascal;
