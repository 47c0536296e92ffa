import { describe, expect, it } from 'vitest';
import { uniformNumbers } from '../numerics/random.js';
import { compareSections } from './compare-sections.js';
import { compareSetUps } from './compare-set-ups.js';
import type { ComparisonRun } from './comparison-request.js';

const REQUEST = { current: 'a', margin: 0.01, look: null, trend: 'linear' } as const;
const normals = (seed: number) => {
  const uniform = uniformNumbers(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
};

/** Eight runs in a balanced order, one rider; `b` takes `share` more time, with 1 % of scatter. */
function runs(share: number, normal: () => number): ComparisonRun[] {
  return ['a', 'b', 'b', 'a', 'b', 'a', 'a', 'b'].map((arm, i) => ({
    arm,
    rider: 'r',
    session: 's',
    position: i + 1,
    time: 40 * Math.exp((arm === 'b' ? share : 0) + 0.01 * normal()),
    voided: false,
  }));
}

describe('sections', () => {
  it('are compared as the whole is, where there is one alone', () => {
    const times = runs(0.03, normals(1));
    const [alone] = compareSections(REQUEST, [{ section: 'Stairs', runs: times, history: [] }]);
    expect(alone).toEqual({ ...compareSetUps({ ...REQUEST, runs: times, history: [] }), section: 'Stairs' });
  });

  it('do not say faster or slower by chance more than 5 times in 100, however many are looked at', () => {
    // 1,000 tracks of six sections without any difference: at most 5 % with a standard error of 0.7 %; three of them.
    const normal = normals(2);
    const wrong = Array.from({ length: 1_000 }, () =>
      compareSections(
        REQUEST,
        Array.from({ length: 6 }, (_, i) => ({ section: String(i), runs: runs(0, normal), history: [] })),
      ).some(({ arms }) => arms.some(({ verdict }) => verdict === 'faster' || verdict === 'slower')),
    ).filter(Boolean).length;
    expect(wrong / 1_000).toBeLessThan(0.07);
  });

  it('say why a verdict does not stand among them', () => {
    const normal = normals(3);
    const sections = Array.from({ length: 12 }, (_, i) => ({
      section: String(i),
      runs: runs(-0.02, normal),
      history: [],
    }));
    const found = compareSections(REQUEST, sections).flatMap(({ arms }) => arms);
    const alone = sections.flatMap((section) => compareSetUps({ ...REQUEST, ...section }).arms);
    const lost = found.filter((arm, i) => arm.verdict !== alone[i]?.verdict);
    expect(lost.length).toBeGreaterThan(0);
    for (const { verdict, sentence } of lost) {
      expect(verdict).toBe('cannot tell yet');
      expect(sentence).toBe("Alone this section would say 'faster'; among 12 sections that may be chance.");
    }
  });
});
