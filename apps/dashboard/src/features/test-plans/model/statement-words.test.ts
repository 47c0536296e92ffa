import { describe, expect, it } from 'vitest';
import { statementWords } from './statement-words.js';

const statement = {
  scatterPct: 1.2,
  detectableDifferencePct: 1.94,
  powerAtMarginPct: 39.2,
  powerOfEquivalencePct: 3.6,
  runsForDifference: 29,
  runsForEquivalence: null,
  sentences: [],
};
const unknown = { detectableDifferencePct: null, powerAtMarginPct: null, powerOfEquivalencePct: null };

describe('what a plan can tell', () => {
  it('is said with the own scatter, the margin and what it would take', () => {
    const words = statementWords({ statement, runsAnArm: 4, riders: 2, marginPct: 2 });
    expect(words).toEqual([
      'With your scatter of 1.2\u00a0%, 8\u00a0runs of each would tell 1.9\u00a0% 8 times in 10.',
      'A difference of 2.0\u00a0% is found 39 times in 100.',
      'Where there is no difference, that is shown 4 times in 100.',
      'To find 2.0\u00a0% 8 times in 10 takes 29\u00a0runs of each.',
      'To show that there is no such difference takes more runs than a team can ride.',
      'This is for these riders only. For riders in general it depends on how they differ in what suits them, which only the runs will show; with two set-ups that takes at least four riders.',
    ]);
    expect(statementWords({ statement, runsAnArm: 8, riders: 1, marginPct: 2 })).toHaveLength(5);
  });

  it('of one run each is nothing', () => {
    const [first] = statementWords({ statement, runsAnArm: 1, riders: 1, marginPct: 1 });
    expect(first).toContain('cannot tell anything');
  });

  it('is not known without a scatter, nor where nothing is left to judge it by', () => {
    const size = { runsAnArm: 2, riders: 1, marginPct: 1 };
    const [first] = statementWords({ ...size, statement: { ...statement, ...unknown, scatterPct: null } });
    expect(first).toContain('not known yet');
    const [second] = statementWords({ ...size, statement: { ...statement, ...unknown } });
    expect(second).toContain('nothing to judge your scatter by');
  });
});
