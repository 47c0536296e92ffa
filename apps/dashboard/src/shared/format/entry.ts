import { parseNumber } from './parse.js';
import { scale, scaleOf, type ApiUnit } from './units.js';

/** Enough digits that a figure typed in one unit, stored in the other and read again is what was typed. */
const EXACT_DIGITS = 12;
const exactText = (value: number) => Number(value.toPrecision(EXACT_DIGITS)).toString();

/** A stored figure as the text that a form holds: in the API's unit and to its last digit. */
export const storedText = (value: number | null | undefined): string =>
  value == null ? '' : exactText(value);

/** What a field shows for the text that its form holds; what is no number stays as it is. */
export function shownText(unit: string | undefined, stored: string): string {
  const known = unit === undefined ? undefined : scaleOf(unit);
  const value = parseNumber(stored);
  if (known === undefined || value === null || Number.isNaN(value)) return stored;
  return Number(known.fromApi(value).toFixed(known.decimals)).toString();
}

/** What a form holds for what was typed into its field: the same figure in the API's unit. */
export function textToStore(unit: string | undefined, typed: string): string {
  const known = unit === undefined ? undefined : scaleOf(unit);
  const value = parseNumber(typed);
  if (known === undefined || known.unit === unit || value === null || Number.isNaN(value)) return typed;
  return exactText(known.toApi(value));
}

/** The figure of the next step up or down, in the API's unit: the next whole psi, or the next 0.05 bar. */
export function nextStep(unit: ApiUnit, from: number, by: 1 | -1): number {
  const { fromApi, toApi, step, decimals } = scale(unit);
  const tolerance = 0.5 / 10 ** decimals;
  const steps = fromApi(from) / step;
  const next = by > 0 ? Math.floor(steps + tolerance / step) + 1 : Math.ceil(steps - tolerance / step) - 1;
  return toApi(Number((next * step).toFixed(decimals)));
}

/** A limit as it is shown: rounded inwards, so that who types what they read is not refused. */
export function shownLimit(unit: ApiUnit, limit: number, side: 'least' | 'most'): string {
  const { fromApi, decimals } = scale(unit);
  const parts = Number((fromApi(limit) * 10 ** decimals).toPrecision(EXACT_DIGITS));
  return Number(
    ((side === 'least' ? Math.ceil(parts) : Math.floor(parts)) / 10 ** decimals).toFixed(decimals),
  ).toString();
}
