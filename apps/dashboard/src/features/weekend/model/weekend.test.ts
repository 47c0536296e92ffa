import { describe, expect, it } from 'vitest';
import { isDay, lastDay, leaveOut, nextSaturday, placeOf, withBike } from './weekend.js';

describe('the days of a weekend', () => {
  it('begin on the Saturday that comes, today where it is one', () => {
    expect(nextSaturday(new Date(2026, 10, 25, 23, 59))).toBe('2026-11-28');
    expect(nextSaturday(new Date(2026, 10, 28, 0, 1))).toBe('2026-11-28');
    expect(nextSaturday(new Date(2026, 11, 27))).toBe('2027-01-02');
  });

  it('are four, also over the end of a year and the day on which clocks change', () => {
    expect(lastDay('2026-12-30')).toBe('2027-01-02');
    expect(lastDay('2026-03-27')).toBe('2026-03-30');
    expect(lastDay('2026-10-23')).toBe('2026-10-26');
  });

  it.each(['2026-02-30', '2026-13-01', 'soon', '', '2026-1-1'])('%s is none', (text) => {
    expect(isDay(text)).toBe(false);
  });
});

describe('an address', () => {
  it('holds the place, and what makes no sense in it is left out', () => {
    const place = { trackId: 't', day: '2026-05-09', ground: 'wet', temperatureC: -4, without: 'a,b' };
    expect(placeOf({ ...place, sheet: 'team' })).toEqual(place);
    expect(placeOf({ temperatureC: 300 })).toEqual({});
    expect(placeOf({ trackId: 4, day: '2026-02-30', temperatureC: 'cold', without: null })).toEqual({});
  });

  it('leaves bikes at home and takes them along again', () => {
    const without = withBike(withBike({ trackId: 't' }, 'a', false), 'b', false);
    expect(without).toEqual({ trackId: 't', without: 'a,b' });
    expect(withBike(withBike(without, 'a', true), 'b', true)).toEqual({ trackId: 't' });
    expect(leaveOut({ trackId: 't', temperatureC: 3 }, 'temperatureC')).toEqual({ trackId: 't' });
  });
});
