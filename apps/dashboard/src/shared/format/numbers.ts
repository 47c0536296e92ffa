import { rounded, scale, shownUnit } from './units.js';
import { withUnit } from './with-unit.js';

/** The language of the pages; the one place to change it. */
const LANGUAGE = 'en-GB';
const PERCENT = 100;
/** Below this share a probability is shown as "under 1 %", since the model does not know it better. */
const SMALLEST_SHOWN_SHARE = 0.01;

/** By decimals. Making one costs more than a hundred figures formatted with it. */
const formats = new Map<number, Intl.NumberFormat>();

function formatWith(decimals: number): Intl.NumberFormat {
  const known = formats.get(decimals);
  if (known !== undefined) return known;
  const made = new Intl.NumberFormat(LANGUAGE, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    // As fields and charts write it: 1740 m, and 12,000.
    useGrouping: 'min2',
  });
  formats.set(decimals, made);
  return made;
}

/** A number with a fixed count of decimals, in tabular form: 7.50. */
export const formatNumber = (value: number, decimals = 0): string => formatWith(decimals).format(value);

/** What a change is called that rounds to nothing: a sign before a nought reads as an uncertainty. */
const NO_CHANGE = withUnit('no', 'change');

/** Whether a change rounds to nothing. */
export const isNoChange = (value: number, decimals = 0): boolean =>
  Number(formatNumber(Math.abs(value), decimals).replaceAll(',', '')) === 0;

/** A figure with its sign, where the two sides of nothing are told apart: +3, −1.5, 0. */
export function formatSigned(value: number, decimals = 0): string {
  const text = formatNumber(Math.abs(value), decimals);
  return isNoChange(value, decimals) ? text : `${value > 0 ? '+' : '−'}${text}`;
}

/** A change: +3 psi, −1.5, no change. */
export const formatChange = (value: number, decimals = 0, unit = ''): string =>
  isNoChange(value, decimals) ? NO_CHANGE : withUnit(formatSigned(value, decimals), unit);

/** A share between 0 and 1 in per cent: 4 %, under 1 %. */
export function formatShare(share: number): string {
  if (share > 0 && share < SMALLEST_SHOWN_SHARE) return `under ${withUnit('1', '%')}`;
  if (share < 1 && share > 1 - SMALLEST_SHOWN_SHARE) return `over ${withUnit('99', '%')}`;
  return withUnit(formatNumber(share * PERCENT), '%');
}

/** A hit height in metres, with the decimals its size deserves: 0.42, 1.6. */
export function formatHeight(metres: number): string {
  return formatNumber(metres, metres < 1 ? 2 : 1);
}

/** What so many of a thing are called: run, runs. */
export const wordFor = (count: number, one: string, several = `${one}s`): string =>
  count === 1 ? one : several;

/** One of something, or several: 1 run, 4 runs. */
export const formatCount = (count: number, one: string, several?: string): string =>
  withUnit(formatNumber(count), wordFor(count, one, several));

/** What a person can pump to: half psi, a twentieth of a bar. */
export const pumpable = (psi: number): number => rounded('psi', psi, 'pumpStep');

/** Decimals that a gauge shows: in psi a tenth only where there is one. */
const gaugeDecimals = (psi: number): number => {
  const { decimals, step } = scale('psi');
  return step === 1 && Math.abs(psi - Math.round(psi)) < 0.5 / 10 ** decimals ? 0 : decimals;
};

/** A pressure as a gauge is read: whole psi, or with a half or tenth where there is one; hundredths of a bar. */
export const formatPressure = (psi: number): string =>
  formatNumber(scale('psi').fromApi(psi), gaugeDecimals(psi));

/** 71 psi, 4.90 bar. */
export const pressureText = (psi: number): string => withUnit(formatPressure(psi), shownUnit('psi'));

/** The change of a pressure: −3 psi, +0.21 bar, no change. */
export const pressureChangeText = (psi: number): string =>
  formatChange(scale('psi').fromApi(psi), gaugeDecimals(psi), shownUnit('psi'));

/** 6 °C, 43 °F. */
export const temperatureText = (celsius: number): string =>
  withUnit(formatNumber(scale('°C').fromApi(celsius)), shownUnit('°C'));
