import { describe, expect, it } from 'vitest';
import type { PlannedRun } from '../api/plans.js';
import { orderOf, progressOf, riderToRide, savedAfter, setupOfArm } from './order.js';

const run = (position: number, part: Partial<PlannedRun> = {}): PlannedRun => ({
  riderId: 'fern',
  letter: 'A',
  kind: 'counted',
  position,
  runId: null,
  timeS: null,
  voidReason: null,
  ...part,
});
const runs = [
  run(1, { runId: 'r1', timeS: 180 }),
  run(2, { runId: 'r2', voidReason: 'Slid out' }),
  run(3),
  run(1, { riderId: 'moss' }),
  run(4),
];

describe('the order of a rider', () => {
  it('tells what is done, void, next and still to come, of this rider only', () => {
    const states = orderOf({ runs, closedAt: null }, 'fern').map(({ state }) => state);
    expect(states).toEqual(['done', 'void', 'next', 'open']);
  });

  it('has no next run once the plan is closed', () => {
    const states = orderOf({ runs, closedAt: '2026-05-09T16:00:00Z' }, 'fern').map(({ state }) => state);
    expect(states).toEqual(['done', 'void', 'open', 'open']);
  });
});

describe('places that count as ridden before the plan says so', () => {
  const waits = (position: number) => ({ position, isRefused: false });
  const refused = (position: number) => ({ position, isRefused: true });

  it('are those of runs that wait, also once they have left the device', () => {
    const seen = savedAfter([1], [waits(2), waits(2)]);
    expect(seen).toEqual([1, 2]);
    expect(savedAfter(seen, [])).toBe(seen);
  });

  it('are given back when the run is refused, and taken again when it is sent again', () => {
    const seen = savedAfter([1, 2], [refused(1), waits(2)]);
    expect(seen).toEqual([2]);
    expect(savedAfter(seen, [waits(1), waits(2)])).toEqual([2, 1]);
  });

  it('stay where another run for the same place waits beside a refused one', () => {
    const saved = [1];
    expect(savedAfter(saved, [refused(1), waits(1)])).toBe(saved);
  });
});

it('the rider to look at is the one asked for, else the first with a run to ride', () => {
  const place = (riderId: string, next: PlannedRun | null) => ({
    riderId,
    next,
    nextSetupId: null,
    ridden: 0,
    left: 0,
    voidedRunIds: [],
    restIsStale: false,
  });
  const places = [place('moss', null), place('fern', run(1))];
  expect(riderToRide(places, undefined)?.riderId).toBe('fern');
  expect(riderToRide(places, 'moss')?.riderId).toBe('moss');
  expect(riderToRide([], 'moss')).toBeUndefined();
});

it('progress counts over all riders', () => {
  const rider = { riderId: '', bikeId: '' };
  expect(
    progressOf([
      { ...rider, ridden: 1, left: 3 },
      { ...rider, ridden: 3, left: 1 },
    ]),
  ).toEqual({ ridden: 4, all: 8 });
});

it('an arm whose set-ups are hidden has none', () => {
  const arm = { letter: 'A', name: null, current: null };
  expect(setupOfArm({ arms: [{ ...arm, setups: [] }] }, 'A', 'bike')).toBeNull();
  const setups = [{ bikeId: 'bike', setupId: 'set-up' }];
  expect(setupOfArm({ arms: [{ ...arm, setups }] }, 'A', 'bike')).toBe('set-up');
});
