import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TestPlanRequest } from './plan-request.js';
import { makeTestPlan } from './test-plan.js';

const request: TestPlanRequest = {
  arms: ['now', 'plus one spacer'],
  riders: ['one'],
  runsAnArm: 4,
  warmUps: 2,
  seed: 7,
  blind: true,
  trend: 'linear',
  margin: 0.01,
  looks: 1,
  scatter: { sd: 0.012, df: 20 },
};

const requests = fc.record({
  arms: fc.integer({ min: 2, max: 4 }).map((n) => Array.from({ length: n }, (_, i) => `set-up ${i}`)),
  riders: fc.integer({ min: 1, max: 4 }).map((n) => Array.from({ length: n }, (_, i) => `rider ${i}`)),
  runsAnArm: fc.integer({ min: 1, max: 4 }),
  warmUps: fc.integer({ min: 0, max: 2 }),
  seed: fc.nat(),
});

describe('a test plan', () => {
  it('holds every run asked for, in places that follow each other, warm-ups first', () => {
    fc.assert(
      fc.property(requests, (asked) => {
        const plan = makeTestPlan({ ...request, ...asked, scatter: null });
        for (const rider of asked.riders) {
          const own = plan.runs.filter((run) => run.rider === rider);
          expect(own.map((run) => run.position)).toEqual(own.map((_, i) => i + 1));
          expect(own.slice(0, asked.warmUps).every((run) => run.kind === 'warm-up')).toBe(true);
          for (const arm of asked.arms) {
            const counted = own.filter((run) => run.kind === 'counted' && run.arm === arm);
            expect(counted).toHaveLength(asked.runsAnArm);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('is the same for the same seed, and letters differ between seeds', () => {
    expect(makeTestPlan(request)).toEqual(makeTestPlan(request));
    const letters = [1, 2, 3, 4, 5, 6, 7, 8].map(
      (seed) => makeTestPlan({ ...request, seed }).letters[0]?.letter,
    );
    expect(new Set(letters).size).toBe(2);
  });

  it('for two set-ups of four runs is as good as an order can be', () => {
    expect(makeTestPlan(request).score.maxInflation).toBeCloseTo(1, 9);
  });

  it('says before the first run how little four runs a set-up can tell', () => {
    const { statement } = makeTestPlan(request);
    expect(statement.detectableDifference).toBeGreaterThan(0.01);
    expect(statement.powerAtMargin).toBeLessThan(0.5);
    expect(statement.runsForEquivalence).toBeGreaterThan(20);
    expect(statement.sentences.join(' ')).toMatch(/8 times in 10/);
  });

  it('promises nothing for riders in general that a few riders cannot tell', () => {
    const say = (riders: number, more: Partial<TestPlanRequest> = {}): string =>
      makeTestPlan({
        ...request,
        riders: Array.from({ length: riders }, (_, i) => `rider ${i}`),
        ...more,
      }).statement.sentences.join(' ');
    expect(say(1)).not.toMatch(/riders/);
    expect(say(3)).toMatch(/For these 3 riders only, a difference of .* no verdict.* at least 4 riders/);
    expect(say(2, { arms: ['a', 'b', 'c', 'd'] })).not.toMatch(/no verdict/);
    const best = (text: string): number =>
      Number(/verdict is for, it is ([\d.]+) % if the same suits all/.exec(text)?.[1]);
    const these = (text: string): number => Number(/only, a difference of ([\d.]+) %/.exec(text)?.[1]);
    // On 3 degrees of freedom instead of some forty the same runs tell much less.
    expect(best(say(4))).toBeGreaterThan(1.2 * these(say(4)));
  });

  it('one run a set-up: no test is possible, and it says why', () => {
    const { statement } = makeTestPlan({ ...request, runsAnArm: 1 });
    expect(statement.detectableDifference).toBeNull();
    expect(statement.sentences.join(' ')).toMatch(/cannot be told apart/);
  });

  it('says over several riders whether what one set-up leaves for the next cancels', () => {
    const over = (riders: string[], runsAnArm: number) => makeTestPlan({ ...request, riders, runsAnArm });
    const balanced = over(['one', 'two'], 1);
    expect(balanced.carryOverBalanced).toBe(true);
    expect(balanced.statement.sentences.join(' ')).not.toContain('what one leaves behind');
    const odd = over(['one', 'two', 'three'], 1);
    expect(odd.carryOverBalanced).toBe(false);
    expect(odd.statement.sentences.at(-1)).toContain('what one leaves behind for the next does not cancel');
    // With their mirror images two set-ups follow each other equally often, whoever rides.
    expect(over(['one', 'two', 'three'], 4).carryOverBalanced).toBe(true);
  });

  it('over three riders and three set-ups is ideal for every seed', () => {
    for (let seed = 0; seed < 60; seed += 1) {
      const { score } = makeTestPlan({
        ...request,
        arms: ['a', 'b', 'c'],
        riders: ['one', 'two', 'three'],
        runsAnArm: 1,
        seed,
      });
      expect(score.maxInflation).toBeCloseTo(1, 9);
    }
  });

  it('refuses what no team rides', () => {
    expect(() => makeTestPlan({ ...request, arms: ['a'] })).toThrowError(/arms/);
    expect(() => makeTestPlan({ ...request, arms: ['a', 'a'] })).toThrowError(/all different/);
    expect(() => makeTestPlan({ ...request, runsAnArm: 2.5 })).toThrowError(/whole numbers/);
  });
});
