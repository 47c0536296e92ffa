/** Far more than anything here is known to, and few enough to hide the last bits of a conversion. */
const SIGNIFICANT_DIGITS = 12;

/** The same message with 18 where a conversion there and back has left 18.000000000000014. */
export function tidyNumbers(value: unknown): unknown {
  if (typeof value === 'number') {
    return Number.isInteger(value) ? value : Number(value.toPrecision(SIGNIFICANT_DIGITS));
  }
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(tidyNumbers);
  if (!isPlain(value)) return value;
  const tidy: Record<string, unknown> = {};
  for (const key in value) tidy[key] = tidyNumbers(value[key]);
  return tidy;
}

const isPlain = (value: object): value is Record<string, unknown> =>
  Object.getPrototypeOf(value) === Object.prototype;
