import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareSetUps } from './compare-set-ups.js';
import type { ComparisonRun } from './comparison-request.js';
import { pooledScatter, sessionVariances } from './session-scatter.js';

const run = (arm: string, position: number, time: number | null, more: Partial<ComparisonRun> = {}) => ({
  arm,
  rider: 'one',
  session: 'one',
  position,
  time,
  voided: false,
  ...more,
});

const times = fc.array(fc.double({ min: 90, max: 110, noNaN: true }), { minLength: 5, maxLength: 12 });

describe('the scatter of a session', () => {
  it('is what a comparison finds in the same runs', () => {
    fc.assert(
      fc.property(times, (given) => {
        const runs = given.map((time, i) => run(i % 2 === 0 ? 'A' : 'B', i + 1, time));
        const { session } = compareSetUps({
          runs,
          current: 'A',
          margin: 0.01,
          history: [],
          look: null,
          trend: 'linear',
        });
        const [found] = sessionVariances(runs);
        expect(found?.df).toBe(session?.df);
        // The same least squares, columns in another order.
        expect(found?.variance).toBeCloseTo(session?.variance ?? -1, 12);
      }),
    );
  });

  it('on a single set-up is that around a straight line', () => {
    const runs = [100, 101, 99, 102].map((time, i) => run('A', i + 1, time));
    const logs = runs.map(({ time }) => Math.log(time ?? 1));
    const places = [-1.5, -0.5, 0.5, 1.5];
    const mean = logs.reduce((sum, y) => sum + y, 0) / 4;
    const slope = places.reduce((sum, x, i) => sum + x * (logs[i] as number), 0) / 5;
    const squares = places.reduce((sum, x, i) => sum + ((logs[i] as number) - mean - slope * x) ** 2, 0);
    const [found] = sessionVariances(runs);
    expect(found?.df).toBe(2);
    // Closed form of a line through four points; 1e-15 of rounding.
    expect(found?.variance).toBeCloseTo(squares / 2, 14);
  });

  it('keeps riders and sessions apart, and leaves out void and untimed runs and sessions without any to spare', () => {
    const runs = ['one', 'two'].flatMap((rider) =>
      [100, 103, 99, 101].map((time, i) => run('A', i + 1, time, { rider })),
    );
    const alone = sessionVariances(runs);
    expect(alone).toHaveLength(2);
    expect(alone[0]).toEqual(alone[1]);
    const noise = [
      run('A', 9, 300, { voided: true }),
      run('A', 10, null),
      run('A', 1, 250, { session: 'short' }),
      run('B', 2, 200, { session: 'short' }),
    ];
    expect(sessionVariances([...runs, ...noise])).toEqual(alone);
    expect(sessionVariances([])).toEqual([]);
  });

  it('is 0 where the timer shows no difference', () => {
    expect(sessionVariances([1, 2, 3, 4].map((place) => run('A', place, 100)))).toEqual([
      { variance: 0, df: 2 },
    ]);
  });

  it('refuses a time that cannot be', () => {
    expect(() => sessionVariances([run('A', 1, -1)])).toThrowError(/runs\[0\].time is -1/);
  });
});

describe('the scatter of a team', () => {
  it('weighs sessions by their degrees of freedom', () => {
    const sessions = [
      { variance: 1e-4, df: 2 },
      { variance: 4e-4, df: 6 },
    ];
    const pooled = pooledScatter(sessions);
    expect(pooled?.df).toBe(8);
    expect(pooled?.sd).toBeCloseTo(Math.sqrt((2e-4 + 24e-4) / 8), 15);
  });

  it('is unknown without degrees of freedom, and where the timer showed none', () => {
    expect(pooledScatter([])).toBeNull();
    expect(pooledScatter([{ variance: 0, df: 4 }])).toBeNull();
  });
});
