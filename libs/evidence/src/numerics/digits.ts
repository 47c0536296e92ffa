/** 10 to these powers, and products and quotients by them, are exact or rounded once. */
const EXACT_POWERS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

/**
 * A number rounded to some significant decimal digits (1 to 15), as the nearest double to the decimal, without a text in
 * between where the power of ten is exact: what Number(value.toPrecision(digits)) gives, or, where value lies half way
 * between two decimals as nearly as a double can tell, the other of the two. 0, infinities and NaN come back as they are.
 */
export function toDigits(value: number, digits: number): number {
  const places = digits - 1 - Math.floor(Math.log10(Math.abs(value)));
  const power = EXACT_POWERS[Math.abs(places)];
  if (power === undefined) return Number(value.toPrecision(digits));
  return places < 0 ? Math.round(value / power) * power : Math.round(value * power) / power;
}
