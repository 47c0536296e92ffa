import { describe, expect, it } from 'vitest';
import { elapsedS } from './run-timer.js';

describe('the time of a run', () => {
  it('counts from the moment of the start, however long the page slept', () => {
    expect(elapsedS({ startedAt: 1_000, stoppedAt: null }, 188_400)).toBe(187.4);
  });

  it('stands still once it is stopped', () => {
    expect(elapsedS({ startedAt: 1_000, stoppedAt: 61_000 }, 999_000)).toBe(60);
  });

  it('is never below nothing, though the clock of the phone was set back', () => {
    expect(elapsedS({ startedAt: 5_000, stoppedAt: null }, 1_000)).toBe(0);
  });
});
