import { describe, expect, it } from 'vitest';
import { compareSetUps } from './compare-set-ups.js';
import type { ComparisonRequest, ComparisonRun } from './comparison-request.js';
import { withVoidsCounted } from './with-voids.js';

const SCATTER_PCT = [0.1, -0.1, 0.05, -0.05, 0.08, -0.08, 0.02, -0.02];
/** Places of a balanced order, `b` 3 % faster. */
const RUNS = ['a', 'b', 'b', 'a', 'b', 'a', 'a', 'b'].map((arm, i): ComparisonRun => ({
  arm,
  rider: 'r',
  session: 's',
  position: i + 1,
  time: (arm === 'b' ? 97 : 100) * (1 + (SCATTER_PCT[i] ?? 0) / 100),
  voided: false,
}));
const spoilt = (time: number | null): ComparisonRun => ({
  arm: 'b',
  rider: 'r',
  session: 's',
  position: 9,
  time,
  voided: true,
});
const ask = (runs: readonly ComparisonRun[]) => {
  const request: ComparisonRequest = {
    runs,
    current: 'a',
    margin: 0.01,
    history: [],
    look: null,
    trend: 'linear',
  };
  const without = compareSetUps(request);
  return { without, beside: withVoidsCounted(request, without) };
};

describe('void runs', () => {
  it('leave the verdict as it is, and say what it would be with them', () => {
    const { without, beside } = ask([...RUNS, spoilt(130)]);
    const [own, shown] = [without.arms[0], beside.arms[0]];
    expect(own?.verdict).toBe('faster');
    expect({ ...shown, sentence: '' }).toEqual({ ...own, sentence: '' });
    expect(shown?.sentence).toMatch(
      /With the timed void run counted too: cannot tell yet, [+-]?\d+\.\d %\.$/,
    );
    expect({ ...beside, arms: [] }).toEqual({ ...without, arms: [] });
  });

  it('that were as quick as the others change nothing but are told of', () => {
    const { beside } = ask([...RUNS, spoilt(97)]);
    expect(beside.arms[0]?.sentence).toMatch(/With the timed void run counted too: faster, -\d\.\d %\.$/);
  });

  it('without a time, and none at all, add nothing', () => {
    for (const runs of [RUNS, [...RUNS, spoilt(null)]]) {
      const { without, beside } = ask(runs);
      expect(beside).toEqual(without);
    }
  });
});
