import { describe, expect, it } from 'vitest';
import { myBikeTexts as texts } from '../my-bike-texts.js';
import { whatIsNext, type RiddenPlan } from './what-is-next.js';

const NOW = Date.parse('2026-05-08T20:00');
const run = (letter: string) => ({
  riderId: 'ash',
  letter,
  kind: 'counted' as const,
  position: 3,
  runId: null,
  timeS: null,
  voidReason: null,
});
const place = (letter: string | null, restIsStale = false) => ({
  next: letter === null ? null : run(letter),
  restIsStale,
});
const plan = (id: string, of: RiddenPlan['place']) => ({
  id,
  name: `Plan ${id}`,
  trackId: 'slate',
  place: of,
});
const session = (testPlanId: string | null) => ({
  id: 'session',
  trackId: 'ladder',
  day: '2026-05-09',
  startsAt: '09:30',
  riderIds: ['ash'],
  testPlanId,
  note: 'Two slow runs first.',
  version: 1,
});
const next = (plans: RiddenPlan[], of?: ReturnType<typeof session>, visible = plans) =>
  whatIsNext({ plans, visible, session: of, trackName: (id) => `Track ${id}`, now: NOW });

describe('what a rider rides next', () => {
  it('is the plan of the next session first, with its time, and the session is not said again', () => {
    const rows = next([plan('new', place('B')), plan('old', place('A'))], session('old'));
    expect(rows.map(({ planId, letter }) => [planId, letter])).toEqual([
      ['old', 'A'],
      ['new', 'B'],
    ]);
    expect(rows[0]?.title).toMatch(/^Ride A next · .*9 May.* 09:30$/);
    expect(rows[1]?.title).toBe(texts.yourNext('B'));
    expect(rows[1]?.more).toBe('Plan new');
  });

  it('is the session after the plans where it is of none of them', () => {
    const rows = next([plan('own', place('A'))], session(null));
    expect(rows.map(({ label }) => label)).toEqual([texts.yourPlan, texts.yourSession]);
    expect(rows[1]).toMatchObject({
      more: 'Track ladder · ride and log · Two slow runs first.',
      planId: undefined,
      trackId: 'ladder',
    });
  });

  it('names the plan of a session only to who may see it', () => {
    const [hidden] = next([], session('other'));
    expect(hidden).toMatchObject({ more: 'Track ladder · a test plan · Two slow runs first.' });
    expect(hidden?.planId).toBeUndefined();
    const [seen] = next([], session('other'), [plan('other', undefined)]);
    expect(seen?.more).toContain('Plan other');
    expect(seen?.planId).toBe('other');
  });

  it('is nothing without plan and session', () => {
    expect(next([])).toEqual([]);
  });
});

describe('a plan', () => {
  it('is told as ridden only where the service says that nothing is left', () => {
    expect(next([plan('own', place(null))])[0]).toMatchObject({ title: texts.allRidden, more: 'Plan own' });
  });

  it.each([
    ['whose progress could not be read has its name', undefined, 'Plan own'],
    ['whose order is stale is not ridden', place(null, true), texts.staleOrder],
    ['whose order is stale names no run of it', place('A', true), texts.staleOrder],
  ])('%s', (_, of, title) => {
    const [row] = next([plan('own', of)]);
    expect(row?.title).toBe(title);
    expect(row?.letter).toBeUndefined();
  });
});
