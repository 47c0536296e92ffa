import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { massText, pressureRangeText } from './quantities.js';
import { pressureChangeText, pressureText, temperatureText } from './numbers.js';
import { showFiguresIn } from './sentences.js';
import { wholeInChosenUnits } from './whole-figures.js';
import { nextStep, shownLimit, shownText, storedText, textToStore } from './entry.js';
import { rounded, showIn, shownUnit } from './units.js';

const METRIC = { pressure: 'bar', mass: 'kg', temperature: '°C' } as const;
const OTHER = { pressure: 'bar', mass: 'lb', temperature: '°F' } as const;
const USUAL = { pressure: 'psi', mass: 'kg', temperature: '°C' } as const;
afterEach(() => showIn(USUAL));

/** Pressures of any unit, psi. */
const pressures = fc.double({ min: 5, max: 600, noNaN: true });

describe('figures in the chosen units', () => {
  it('are shown in them', () => {
    showIn(OTHER);
    expect([pressureText(71), massText(82), temperatureText(18)]).toEqual([
      '4.90\u00a0bar',
      '180.8\u00a0lb',
      '64\u00a0°F',
    ]);
    expect(pressureChangeText(-3)).toBe('−0.21\u00a0bar');
    showIn(USUAL);
    expect([pressureText(71), pressureText(70.96), massText(82)]).toEqual([
      '71\u00a0psi',
      '71\u00a0psi',
      '82.0\u00a0kg',
    ]);
    expect(pressureChangeText(-2.5)).toBe('−2.5\u00a0psi');
  });

  it('keep millimetres and all other units', () => {
    showIn(OTHER);
    expect([shownUnit('mm'), shownText('mm', '170.5'), textToStore('N', '18')]).toEqual([
      'mm',
      '170.5',
      '18',
    ]);
  });

  it('typed in bar are stored in psi to the last digit, and read again as they were typed', () => {
    showIn(METRIC);
    expect(Number(textToStore('psi', '5,9'))).toBeCloseTo(85.5723, 3);
    fc.assert(
      fc.property(fc.integer({ min: 35, max: 4_100 }), (hundredths) => {
        const typed = String(hundredths / 100);
        expect(shownText('psi', storedText(Number(textToStore('psi', typed))))).toBe(typed);
      }),
    );
  });

  it('that are none stay what was typed, for the form to refuse', () => {
    showIn(OTHER);
    for (const text of ['', 'soft', '1.2.3']) expect(textToStore('psi', text)).toBe(text);
  });

  it('put into a field stand there in full, however few digits it shows', () => {
    fc.assert(
      fc.property(pressures, (psi) => {
        expect(Number(storedText(psi))).toBeCloseTo(psi, 8);
      }),
    );
  });

  it('are stepped to the next round one, up and down again', () => {
    for (const units of [USUAL, METRIC]) {
      showIn(units);
      const step = units.pressure === 'bar' ? 0.05 : 1;
      fc.assert(
        fc.property(pressures, (psi) => {
          const up = nextStep('psi', psi, 1);
          expect(up).toBeGreaterThan(psi);
          const shown = Number(shownText('psi', storedText(up)));
          expect(Math.abs(shown / step - Math.round(shown / step))).toBeLessThan(1e-9);
          expect(Number(shownText('psi', storedText(nextStep('psi', up, -1))))).toBeCloseTo(shown - step, 9);
        }),
      );
    }
  });

  it('are rounded to what a pump is read to', () => {
    expect(rounded('psi', 71.3, 'pumpStep')).toBe(71.5);
    showIn(METRIC);
    expect(shownText('psi', storedText(rounded('psi', 71.3, 'pumpStep')))).toBe('4.9');
  });
});

describe('limits', () => {
  it('are shown so that who types what they read is within them', () => {
    showIn(METRIC);
    fc.assert(
      fc.property(pressures, (limit) => {
        expect(Number(textToStore('psi', shownLimit('psi', limit, 'most')))).toBeLessThanOrEqual(
          limit + 1e-8,
        );
        expect(Number(textToStore('psi', shownLimit('psi', limit, 'least')))).toBeGreaterThanOrEqual(
          limit - 1e-8,
        );
      }),
    );
    expect(pressureRangeText(40, 120)).toBe('2.76–8.27\u00a0bar');
  });
});

describe('a sentence of the API', () => {
  it('tells its figures in the chosen units', async () => {
    await showFiguresIn(OTHER);
    expect(wholeInChosenUnits('a number from 5 to 600 psi')).toBe('a number from 0.35 to 41.36\u00a0bar');
    expect(wholeInChosenUnits('at most 120 psi')).toBe('at most 8.27\u00a0bar');
    expect(wholeInChosenUnits('fork 71 → 68 psi, 2 → 3 spacers')).toBe(
      'fork 4.9 → 4.69\u00a0bar, 2 → 3\u00a0spacers',
    );
    expect(wholeInChosenUnits('a number from -40 to 55 °C')).toBe('a number from −40 to 131\u00a0°F');
    expect(wholeInChosenUnits('a number from 30 to 160 kg')).toBe('a number from 66.14 to 352.73\u00a0lb');
  });

  it('stays as it is in the units of the API, and keeps what is no figure with a unit', async () => {
    expect(wholeInChosenUnits('a number from 5 to 600 psi')).toBe('a number from 5 to 600\u00a0psi');
    await showFiguresIn(OTHER);
    expect(wholeInChosenUnits('3 spacers and 20 mm; 5 kg/m; psi')).toBe(
      '3\u00a0spacers and 20\u00a0mm; 5\u00a0kg/m; psi',
    );
  });
});
