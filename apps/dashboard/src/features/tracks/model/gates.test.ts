import { describe, expect, it } from 'vitest';
import { gateErrors, gateFormErrors, gateMessage, gateValues } from './gates.js';

const GATE = {
  fromLatitudeDeg: 46.502111234,
  fromLongitudeDeg: -8.1034,
  toLatitudeDeg: 46.5022,
  toLongitudeDeg: -8.1036,
};

describe('a gate in a form', () => {
  it('is typed as maps give a place', () => {
    for (const from of ['46.5, -8.1', '46.5 -8.1', ' 46.5; −8.1 ', '46.5°, -8.1°']) {
      const gate = gateMessage({ from, to: '46.6, -8.2' }, null);
      expect(gate).toEqual({
        fromLatitudeDeg: 46.5,
        fromLongitudeDeg: -8.1,
        toLatitudeDeg: 46.6,
        toLongitudeDeg: -8.2,
      });
    }
  });

  it('is saved to the last digit where it was only looked at', () => {
    const values = gateValues(GATE);
    expect(values.from).toBe('46.502111, -8.1034');
    expect(gateMessage(values, GATE)).toBe(GATE);
    expect(gateMessage({ ...values, to: '46.5, -8.1' }, GATE)?.fromLatitudeDeg).toBe(46.502111);
  });

  it('may be left out, and is none with one end only or with what is no place', () => {
    expect(gateMessage(gateValues(null), GATE)).toBeNull();
    expect(gateErrors('startGate', { from: '', to: '' })).toEqual({});
    expect(Object.keys(gateErrors('startGate', { from: '46.5, 8.1', to: '' }))).toEqual(['startGate.to']);
    for (const from of ['46.5', '46,5 8,1', 'at the top', '46.5, 8.1, 3']) {
      expect(Object.keys(gateErrors('finishGate', { from, to: '46.5, 8.1' }))).toEqual(['finishGate.from']);
    }
  });

  it('shows at its place what the API refuses', () => {
    expect(gateFormErrors({ startGate: 'a', 'finishGate.toLatitudeDeg': 'b', name: 'c' })).toEqual({
      'startGate.from': 'a',
      'finishGate.to': 'b',
      name: 'c',
    });
  });
});
