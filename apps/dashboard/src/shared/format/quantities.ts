import { shownLimit, shownText } from './entry.js';
import { formatNumber } from './numbers.js';
import { numberText } from './parse.js';
import { scale, shownUnit } from './units.js';
import { withUnit } from './with-unit.js';

/** 40–120 psi, and no further: limits are rounded inwards. */
export const pressureRangeText = (least: number | null, most: number | null): string =>
  withUnit(
    `${shownLimit('psi', least ?? 0, 'least')}–${shownLimit('psi', most ?? 0, 'most')}`,
    shownUnit('psi'),
  );

/** 81.5 kg, 179.7 lb. */
export const massText = (kilograms: number): string =>
  withUnit(formatNumber(scale('kg').fromApi(kilograms), 1), shownUnit('kg'));

/** A stored figure with its unit: 4.3 kg, 908 mm². */
export const figureText = (value: number, unit: string): string =>
  withUnit(shownText(unit, numberText(value)), shownUnit(unit));
