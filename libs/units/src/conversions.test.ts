import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as units from './index.js';

/** Relative tolerance of a there-and-back conversion: a handful of roundings in double precision. */
const ROUND_TRIP = 1e-12;

describe('conversions', () => {
  it('1 psi is 6894.757293168 Pa (NIST SP 811, appendix B, from memory)', () => {
    expect(units.gaugePascalFromPsi(1)).toBeCloseTo(6894.757293168, 8);
  });

  it('fixed points of temperature: 0 °C = 273.15 K = 32 °F, 100 °C = 212 °F', () => {
    expect(units.kelvinFromCelsius(0)).toBe(273.15);
    expect(units.fahrenheitFromCelsius(0)).toBe(32);
    expect(units.fahrenheitFromCelsius(100)).toBe(212);
  });

  it('half a turn is 180 degrees', () => {
    expect(units.radianFromDegrees(180)).toBeCloseTo(Math.PI, 15);
  });

  it.each<[string, (x: number) => number, (x: number) => number]>([
    ['psi', units.gaugePascalFromPsi, (x) => units.psiFromGaugePascal(units.gaugePascal(x))],
    ['bar', units.gaugePascalFromBar, (x) => units.barFromGaugePascal(units.gaugePascal(x))],
    [
      'hPa',
      units.absolutePascalFromHectopascal,
      (x) => units.hectopascalFromAbsolutePascal(units.absolutePascal(x)),
    ],
    ['lb', units.kilogramsFromPounds, units.poundsFromKilograms],
    ['mm', units.metresFromMillimetres, units.millimetresFromMetres],
    ['mm²', units.squareMetresFromSquareMillimetres, units.squareMillimetresFromSquareMetres],
    ['mL', units.cubicMetresFromMillilitres, units.millilitresFromCubicMetres],
    ['°', units.radianFromDegrees, (x) => units.degreesFromRadian(units.radian(x))],
    ['°F', units.celsiusFromFahrenheit, units.fahrenheitFromCelsius],
  ])('%s there and back gives the same number', (_, there, back) => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (x) => {
        expect(Math.abs(back(there(x)) - x)).toBeLessThanOrEqual(ROUND_TRIP * Math.max(64, Math.abs(x)));
      }),
    );
  });
});

describe('pressures', () => {
  it('a gauge reading and its absolute pressure differ by the ambient pressure', () => {
    const ambient = units.absolutePascal(90_000);
    const gauge = units.gaugePascal(400_000);
    expect(units.absoluteFromGauge(gauge, ambient)).toBe(490_000);
    expect(units.gaugeFromAbsolute(units.absolutePascal(490_000), ambient)).toBe(gauge);
  });
});
