import { describe, expect, it } from 'vitest';
import { GENERIC_UNITS } from './generic-units.js';
import { UNIT_FIGURES } from './figures.js';
import { unitMessage, unitValues, withGeneric } from './unit-form.js';

describe('the form of a spring unit', () => {
  it.each(GENERIC_UNITS.map(({ id }) => id))('%s fills every figure and marks each assumed', (id) => {
    const message = unitMessage(withGeneric(unitValues(undefined), id));
    for (const figure of UNIT_FIGURES) {
      expect(message[figure], figure).toEqual(expect.any(Number));
      expect(message[figure], figure).not.toBeNaN();
      expect(message.sources?.[figure]).toBe('assumed');
    }
  });

  it('keeps a name and limits that were typed before the starting values were chosen', () => {
    const typed = { ...unitValues(undefined), name: 'Fork 1', maxPressurePsi: '120' };
    expect(withGeneric(typed, 'fork-170')).toMatchObject({
      name: 'Fork 1',
      maxPressurePsi: '120',
      strokeMm: '170',
    });
  });

  it('sends limits left empty as not entered, never as zero', () => {
    const message = unitMessage(withGeneric(unitValues(undefined), 'shock-65'));
    expect(message).toMatchObject({ minPressurePsi: null, maxPressurePsi: null, maxSpacers: null });
  });

  it('leaves a figure that was emptied for the API to refuse, and does not make it zero', () => {
    const values = { ...withGeneric(unitValues(undefined), 'fork-170'), boreAreaMm2: '' };
    expect(unitMessage(values).boreAreaMm2).toBeNaN();
  });
});
