import { describe, expect, it } from 'vitest';
import type { RunPoint } from '../api/comparison.js';
import { fittedLine, keyOf, runGroups, trendLine } from './run-groups.js';

const point = (
  riderId: string,
  sessionId: string,
  position: number,
  part: Partial<RunPoint> = {},
): RunPoint => ({
  letter: 'A',
  name: 'As it is',
  setupId: null,
  runId: `${riderId} ${sessionId} ${position}`,
  riderId,
  sessionId,
  position,
  voided: false,
  timeS: 180,
  fittedS: 181,
  trendS: 182,
  ...part,
});

describe('the pictures of a comparison', () => {
  it('are one for each rider and session, in the order of riding, and leave no run out', () => {
    const points = [
      point('fern', 's1', 2),
      point('moss', 's1', 1),
      point('fern', 's1', 1),
      point('fern', 's2', 1),
    ];
    const groups = runGroups(points);
    expect(groups.map(({ riderId, session }) => [riderId, session])).toEqual([
      ['fern', 1],
      ['moss', 1],
      ['fern', 2],
    ]);
    expect(groups[0]?.points.map(({ position }) => position)).toEqual([1, 2]);
    expect(groups.flatMap((group) => group.points)).toHaveLength(points.length);
  });

  it('have a line of each arm through its own fitted times, and a trend through all', () => {
    const points = [
      point('fern', 's', 1),
      point('fern', 's', 2, { letter: 'B' }),
      point('fern', 's', 3, { voided: true, fittedS: null, trendS: null }),
    ];
    expect(fittedLine(points, 'B')).toEqual([{ place: 2, timeS: 181 }]);
    expect(trendLine(points).map(({ place }) => place)).toEqual([1, 2]);
  });

  it('tell arms of a plan by letter, and set-ups by their id', () => {
    expect(keyOf({ letter: 'B', setupId: null })).toBe('B');
    expect(keyOf({ letter: null, setupId: 'x' })).toBe('x');
  });
});
