import { describe, expect, it } from 'vitest';
import { isAirTemperature } from './air-temperature.js';

describe('the temperature of the air', () => {
  it.each([-40, -0.5, 0, 55])('may be %f °C', (celsius) => {
    expect(isAirTemperature(celsius)).toBe(true);
  });

  it.each([-40.1, 55.1, 90, 300, Number.NaN, Infinity])(
    'is no air that anybody rides in at %f °C',
    (celsius) => {
      expect(isAirTemperature(celsius)).toBe(false);
    },
  );
});
