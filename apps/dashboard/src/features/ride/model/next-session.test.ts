import { describe, expect, it } from 'vitest';
import { nextSession } from './next-session.js';

const session = (day: string, startsAt: string, riderIds = ['ash']) => ({
  id: `${day} ${startsAt}`,
  trackId: 'track',
  day,
  startsAt,
  riderIds,
  testPlanId: null,
  note: '',
  version: 1,
});
const at = (moment: string) => Date.parse(moment);
const sessions = [
  session('2026-05-09', '09:30'),
  session('2026-05-09', '11:00', ['bramble']),
  session('2026-05-09', '13:00', ['bramble', 'ash']),
  session('2026-05-10', '09:00'),
];

describe('the next session of a rider', () => {
  it.each([
    ['the day before', '2026-05-08T20:00', '2026-05-09 09:30'],
    ['before it starts', '2026-05-09T09:29', '2026-05-09 09:30'],
    ['within an hour of its start, for who comes late', '2026-05-09T10:29', '2026-05-09 09:30'],
    ['later than that: the next one that they ride in', '2026-05-09T10:30', '2026-05-09 13:00'],
    ['in the evening: that of the next day', '2026-05-09T18:00', '2026-05-10 09:00'],
  ])('is told %s', (_, now, id) => {
    expect(nextSession(sessions, 'ash', at(now))?.id).toBe(id);
  });

  it('is none where none is left, or none is theirs', () => {
    expect(nextSession(sessions, 'ash', at('2026-05-10T10:00'))).toBeUndefined();
    expect(nextSession(sessions, 'clover', at('2026-05-08T10:00'))).toBeUndefined();
    expect(nextSession([], 'ash', at('2026-05-08T10:00'))).toBeUndefined();
  });
});
