import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { typedTemperature } from './typed-temperature.js';

const HOUR_MS = 3_600_000;
const kept = new Map<string, string>();
beforeEach(() => {
  kept.clear();
  vi.stubGlobal('localStorage', {
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, text: string) => kept.set(name, text),
    removeItem: (name: string) => kept.delete(name),
  });
});
afterEach(() => vi.unstubAllGlobals());

describe('a temperature that was typed for a track', () => {
  it('is that of this track for some hours, and of no other', () => {
    typedTemperature.write('slate', 31, 0);
    expect(typedTemperature.read('slate', HOUR_MS)).toBe(31);
    expect(typedTemperature.read('ladder', HOUR_MS)).toBeNull();
    expect(typedTemperature.read(undefined, HOUR_MS)).toBeNull();
    expect(typedTemperature.read('slate', 7 * HOUR_MS)).toBeNull();
  });

  it('is forgotten where the field is emptied', () => {
    typedTemperature.write('slate', 31, 0);
    typedTemperature.write('slate', null, 0);
    expect(typedTemperature.read('slate', 0)).toBeNull();
  });

  it('is not taken from what an earlier version kept of no air that anybody rides in', () => {
    typedTemperature.write('slate', 300, 0);
    expect(typedTemperature.read('slate', 0)).toBeNull();
  });
});
