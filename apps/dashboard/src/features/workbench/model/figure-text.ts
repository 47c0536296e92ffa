import { formatNumber, formatShare, formatSigned, isNoChange } from '../../../shared/format/numbers.js';
import { FIGURE_TEXTS } from '../texts.js';
import type { Figure } from './answers.js';
import type { Interval } from './uncertainty.js';
import { withUnit } from '../../../shared/format/with-unit.js';

const PER_CENT = 100;

/** A figure with its unit: 18.1 %, 161 mm, under 1 %. */
export function figureText(figure: Figure, value: number): string {
  const { unit, decimals } = FIGURE_TEXTS[figure];
  if (figure === 'riskPct') return formatShare(value / PER_CENT);
  return withUnit(formatNumber(value, decimals), unit);
}

/** The change of a figure from now, in brackets: (−0.6). Nothing where it stays: the eye finds what moves. */
export function changeText(figure: Figure, change: number): string {
  const decimals = changeDecimalsOf(figure);
  return isNoChange(change, decimals) ? '' : `(${formatSigned(change, decimals)})`;
}

function changeDecimalsOf(figure: Figure): number {
  const { decimals, changeDecimals } = FIGURE_TEXTS[figure];
  return changeDecimals ?? decimals;
}

/** 17.5–18.7 %; a risk as shares of runs. */
export function intervalText(figure: Figure, { lower, upper }: Interval): string {
  const { unit, decimals } = FIGURE_TEXTS[figure];
  if (figure === 'riskPct') return `${formatShare(lower / PER_CENT)} – ${formatShare(upper / PER_CENT)}`;
  return withUnit(`${formatNumber(lower, decimals)}–${formatNumber(upper, decimals)}`, unit);
}

/** −0.7 to −0.5. */
export function changeIntervalText(figure: Figure, { lower, upper }: Interval): string {
  const decimals = changeDecimalsOf(figure);
  return `${formatSigned(lower, decimals)} to ${formatSigned(upper, decimals)}`;
}
