import { describe, expect, it } from 'vitest';
import { emptyRun, formErrors, obviousErrors, runMessage, valuesOf } from './run-form.js';

const run = emptyRun('track', 'damp');
const ride = { bikeId: 'bike', setupId: 'ridden', day: '2026-05-09' };
const message = (change: Partial<typeof run>, isSpoilt = false) =>
  runMessage({ ...run, ...change, spoilt: isSpoilt }, ride);

describe('a run logged on the phone', () => {
  it('is complete with nothing but the track: no time, no ring, no feel', () => {
    expect(obviousErrors(run)).toEqual({});
    expect(message({})).toMatchObject({
      trackId: 'track',
      condition: 'damp',
      timeS: null,
      fork: null,
      shock: null,
      spoilt: null,
    });
  });

  it('sends travel left as travel left: only the API knows the stroke', () => {
    expect(message({ ringAs: 'left', forkMm: '18' }).fork).toEqual({ travelLeftMm: 18, bottomOuts: null });
    expect(message({ ringAs: 'used', shockMm: '51,5' }).shock).toEqual({
      travelUsedMm: 51.5,
      bottomOuts: null,
    });
  });

  it('keeps a felt bottom-out without a ring reading', () => {
    expect(message({ forkBottomed: true }).fork).toEqual({ bottomOuts: 1 });
  });

  it('stores a spoilt run with its reason or without, and says whether the ring still counts', () => {
    expect(message({ reason: 'Slid out', readingsCount: false }, true).spoilt).toEqual({
      reason: 'Slid out',
      readingsCount: false,
    });
    expect(message({}, true).spoilt?.reason).not.toBe('');
  });

  it('names the set-up that was ridden, whatever is in the bike when it is sent', () => {
    expect(message({})).toMatchObject({ setupId: 'ridden', day: '2026-05-09' });
  });

  it('comes back into the form as it was typed, to be corrected', () => {
    const typed = {
      ...run,
      time: '2:07.4',
      ringAs: 'left' as const,
      forkMm: '18',
      shockMm: '6.5',
      shockBottomed: true,
      ratings: { ...run.ratings, support: 4 },
      note: 'Wet roots',
    };
    expect(valuesOf(runMessage(typed, ride))).toEqual(typed);
    expect(valuesOf(message({ reason: 'Slid out' }, true)).reason).toBe('Slid out');
  });

  it('tells a wrong time or figure before it is sent', () => {
    expect(Object.keys(obviousErrors({ ...run, time: '2:99', forkMm: 'all' }))).toEqual(['time', 'forkMm']);
  });

  it('shows what the API refuses at the field that was typed into', () => {
    expect(formErrors({ 'fork.travelUsedMm': 'Must be at most 170 mm', timeS: 'Must be …' })).toEqual({
      forkMm: 'Must be at most 170 mm',
      time: 'Must be …',
    });
  });
});
