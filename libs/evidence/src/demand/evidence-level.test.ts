import { describe, expect, it } from 'vitest';
import { evidenceLevel } from './evidence-level.js';
import type { DemandReading, ReadingKind } from './reading.js';

const rows = (
  riderId: string,
  trackId: string,
  count: number,
  kind: ReadingKind = 'exact',
): DemandReading[] =>
  Array.from({ length: count }, () => ({ riderId, trackId, logHeight: -0.7, kind, readingSd: 0.1 }));

describe('the level of evidence', () => {
  it.each([
    ['rider here', [...rows('me', 'here', 3), ...rows('other', 'here', 9)]],
    ['team here', [...rows('me', 'here', 2), ...rows('other', 'here', 1)]],
    ['rider elsewhere', [...rows('me', 'there', 3), ...rows('other', 'here', 2)]],
    ['physics only', [...rows('me', 'there', 2), ...rows('other', 'there', 9)]],
  ] as const)('is "%s" from three readings on', (level, readings) => {
    expect(evidenceLevel(readings, 'me', 'here').level).toBe(level);
  });

  it('counts what it rests on', () => {
    const readings = [
      ...rows('me', 'here', 2),
      ...rows('other', 'here', 4, 'at-least'),
      ...rows('other', 'here', 1, 'at-most'),
      ...rows('me', 'there', 5),
    ];
    expect(evidenceLevel(readings, 'me', 'here').counts).toEqual({
      ownHere: 2,
      teamHere: 7,
      ownElsewhere: 5,
      exactHere: 2,
      atLeastHere: 4,
      atMostHere: 1,
      total: 12,
    });
  });

  it('says "at least" for a track with fewer than three exact readings', () => {
    const full = evidenceLevel(rows('me', 'here', 6, 'at-least'), 'me', 'here');
    expect(full.lowerBoundOnly).toBe(true);
    expect(full.message).toMatch(/only as "at least"/);
    expect(evidenceLevel(rows('me', 'here', 3), 'me', 'here').lowerBoundOnly).toBe(false);
  });
});
