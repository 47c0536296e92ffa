import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elapsedS, sectionTimesS } from './run-timer.js';
import { formatRunTime } from '../../../shared/format/time.js';

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

describe('the times of sections', () => {
  const run = { startedAt: 1_000, stoppedAt: 101_040 };

  it('are those between the marks, the last up to the end of the run', () => {
    expect(sectionTimesS({ ...run, marks: [41_000, 61_300] }, 3)).toEqual([40, 20.3, 39.7]);
  });

  it('are not told where nobody marked an end, and not for what comes after the last mark of several missing', () => {
    expect(sectionTimesS({ ...run, marks: [] }, 3)).toEqual([]);
    expect(sectionTimesS({ ...run, marks: [41_000] }, 3)).toEqual([40]);
  });

  it('are not told for a track with fewer sections than were marked on the one before', () => {
    const timer = { ...run, marks: [41_000, 61_300] };
    expect(sectionTimesS(timer, 2)).toEqual([]);
    expect(sectionTimesS(timer, 0)).toEqual([]);
  });

  it('add up to the time of the run as it is shown, whatever was rounded', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 90_000 }), { minLength: 2, maxLength: 9 }),
        (lengths) => {
          const moments = lengths.map((_, i) => lengths.slice(0, i + 1).reduce((a, b) => a + b, 0));
          const timer = { startedAt: 0, stoppedAt: moments.at(-1) as number, marks: moments.slice(0, -1) };
          const sum = sectionTimesS(timer, lengths.length).reduce((a, b) => a + b, 0);
          expect(formatRunTime(sum)).toBe(formatRunTime(elapsedS(timer, 0)));
        },
      ),
    );
  });
});
