/** 10 to these powers, and products and quotients by them, are exact or rounded once. */
const EXACT_POWERS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

/**
 * A number rounded to some significant decimal digits (1 to 15), as the nearest double to the decimal: what
 * Number(value.toPrecision(digits)) gives, without a text in between where the power of ten is exact.
 */
export function toDigits(value: number, digits: number): number {
  const places = digits - 1 - Math.floor(Math.log10(Math.abs(value)));
  const power = EXACT_POWERS[Math.abs(places)];
  if (power === undefined) return Number(value.toPrecision(digits));
  return places < 0 ? Math.round(value / power) * power : Math.round(value * power) / power;
}
