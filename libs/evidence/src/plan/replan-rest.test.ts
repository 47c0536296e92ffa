import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestOrder } from './order-search.js';
import { replanRest, type RiderProgress } from './replan-rest.js';
import { restCost, restImbalance, type PlacedRun } from './rest-balance.js';
import { makeTestPlan, type TestPlan } from './test-plan.js';

const planOf = (arms: number, riders: number, runsAnArm: number, seed = 1, warmUps = 1): TestPlan =>
  makeTestPlan({
    arms: Array.from({ length: arms }, (_, i) => `set-up ${i}`),
    riders: Array.from({ length: riders }, (_, i) => `rider ${i}`),
    runsAnArm,
    warmUps,
    seed,
    blind: false,
    trend: 'linear',
    margin: 0.01,
    looks: 1,
    scatter: null,
  });

/** Where a rider is who rode so many counted runs as planned, some of them void. */
function progressOf(
  plan: TestPlan,
  rider: string,
  ridden: number,
  isVoid: (run: number) => boolean,
): RiderProgress {
  const counted = plan.runs.filter((run) => run.rider === rider && run.kind === 'counted');
  return {
    rider,
    ridden: counted.slice(0, ridden).map(({ arm, position }, i) => ({ arm, position, voided: isVoid(i) })),
    rest: counted.slice(ridden).map(({ arm }) => arm),
  };
}

/** All riders' runs counted anew, as plainly as can be, if one of them rode the rest in this order. */
function costOf(
  plan: TestPlan,
  progress: readonly RiderProgress[],
  rider: string,
  order: readonly string[],
): number {
  const arms = plan.letters.map(({ arm }) => arm);
  const runsOf = ({ rider: one, ridden, rest }: RiderProgress): PlacedRun[] => {
    const warmUps = plan.runs.filter((run) => run.rider === one && run.kind === 'warm-up').length;
    const first = Math.max(warmUps, ...ridden.map(({ position }) => position)) + 1;
    return [
      ...ridden.map(({ arm, position, voided }) => ({ arm: arms.indexOf(arm), position, counts: !voided })),
      ...rest.map((arm, i) => ({ arm: arms.indexOf(arm), position: first + i, counts: true })),
    ];
  };
  const all = progress.map((one) =>
    runsOf({ ...one, rest: one.rider === rider ? order : standing(plan, one) }),
  );
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  const centred = all.map((runs) => {
    const counted = runs.filter(({ counts }) => counts);
    const centre = mean(counted.map(({ position }) => position));
    const square = mean(counted.map(({ position }) => (position - centre) ** 2));
    return counted.map(({ arm, position }) => ({
      arm,
      first: position - centre,
      second: (position - centre) ** 2 - square,
    }));
  });
  const spread = (
    runs: readonly { arm: number; first: number; second: number }[],
    term: 'first' | 'second',
  ) =>
    arms.reduce((sum, _, arm) => {
      const own = runs.filter((run) => run.arm === arm);
      return own.length === 0 ? sum : sum + mean(own.map((run) => run[term])) ** 2;
    }, 0);
  const pairs = arms.flatMap((_, before) =>
    arms.flatMap((__, after) => {
      if (before === after) return [];
      const times = all.flatMap((runs) =>
        runs.filter(
          (run) =>
            run.counts &&
            run.arm === after &&
            runs.some((other) => other.arm === before && other.position === run.position - 1),
        ),
      );
      return [times.length];
    }),
  );
  const runsAnArm = centred.flat().length / arms.length;
  const carryOver = pairs.reduce((sum, times) => sum + ((times - mean(pairs)) / runsAnArm) ** 2, 0);
  const own = centred[progress.findIndex((one) => one.rider === rider)] ?? [];
  return restCost({
    own: { linear: spread(own, 'first'), quadratic: spread(own, 'second') },
    all: { linear: spread(centred.flat(), 'first'), quadratic: spread(centred.flat(), 'second') },
    carryOver,
  });
}

/** What a rider has left as the order stands: void runs again in the end. */
const standing = (plan: TestPlan, { ridden, rest }: RiderProgress): string[] => [
  ...rest,
  ...plan.letters.flatMap(({ arm }) => ridden.filter((run) => run.voided && run.arm === arm).map(() => arm)),
];

/** The order that balances the rider's own runs alone. */
function aloneOf(plan: TestPlan, own: RiderProgress, positions: readonly number[]): string[] {
  const arms = plan.letters.map(({ arm }) => arm);
  const left = standing(plan, own);
  const done = own.ridden.filter(({ voided }) => !voided);
  const order = bestOrder(
    arms.map((arm) => left.filter((entry) => entry === arm).length),
    positions,
    plan.seed,
    done.map(({ arm, position }) => ({ arm: arms.indexOf(arm), position })),
  );
  return order.map((arm) => arms[arm] as string);
}

const cases = fc
  .record({
    arms: fc.integer({ min: 2, max: 4 }),
    riders: fc.integer({ min: 1, max: 5 }),
    runsAnArm: fc.integer({ min: 1, max: 4 }),
    seed: fc.nat(),
    warmUps: fc.integer({ min: 0, max: 2 }),
    ridden: fc.array(fc.nat({ max: 16 }), { minLength: 5, maxLength: 5 }),
    voids: fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }),
  })
  .map(({ arms, riders, runsAnArm, seed, warmUps, ridden, voids }) => {
    const plan = planOf(arms, riders, runsAnArm, seed, warmUps);
    const progress = Array.from({ length: riders }, (_, i) =>
      progressOf(
        plan,
        `rider ${i}`,
        ridden[i] as number,
        (run) => voids[(run + 3 * i) % voids.length] === true,
      ),
    );
    return { plan, progress, own: progress[0] as RiderProgress };
  });

describe('the rest of a plan', () => {
  it('is what is left of each set-up, right behind what was ridden, which stays', () => {
    fc.assert(
      fc.property(cases, ({ plan, progress, own }) => {
        const before = JSON.stringify(progress);
        const rest = replanRest(plan, own.rider, progress);
        expect(JSON.stringify(progress)).toBe(before);
        expect(rest.map(({ arm }) => arm).toSorted()).toEqual(standing(plan, own).toSorted());
        const warmUps = plan.runs.filter((run) => run.rider === own.rider && run.kind === 'warm-up').length;
        const last = own.ridden.at(-1)?.position ?? warmUps;
        expect(rest.map(({ position }) => position)).toEqual(rest.map((_, i) => last + 1 + i));
        for (const { arm, letter, rider, kind } of rest) {
          expect({ rider, kind }).toEqual({ rider: own.rider, kind: 'counted' });
          expect(plan.letters).toContainEqual({ arm, letter });
        }
        expect(replanRest(plan, own.rider, progress)).toEqual(rest);
      }),
      { numRuns: 60 },
    );
  });

  it('of several riders is no worse over all of them than the order that stands or the best of one rider', () => {
    fc.assert(
      fc.property(
        cases.filter(({ progress }) => progress.length > 1),
        ({ plan, progress, own }) => {
          const rest = replanRest(plan, own.rider, progress);
          if (rest.length === 0) return;
          const cost = (order: readonly string[]): number => costOf(plan, progress, own.rider, order);
          const reached = cost(rest.map(({ arm }) => arm));
          const alone = aloneOf(
            plan,
            own,
            rest.map(({ position }) => position),
          );
          // Sums of some forty squares of places up to 40, thousandfold: rounding stays below 1e-6.
          expect(reached).toBeLessThan(cost(standing(plan, own)) + 1e-6);
          expect(reached).toBeLessThan(cost(alone) + 1e-6);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('of one rider is balanced for that rider', () => {
    const plan = planOf(3, 1, 4);
    const own = progressOf(plan, 'rider 0', 4, (run) => run === 2);
    const rest = replanRest(plan, own.rider, [own]);
    expect(rest.map(({ arm }) => arm)).toEqual(
      aloneOf(
        plan,
        own,
        rest.map(({ position }) => position),
      ),
    );
  });

  it('of three riders mostly costs less over all of them than one balanced for its rider alone', () => {
    let better = 0;
    const seeds = Array.from({ length: 12 }, (_, i) => i);
    for (const seed of seeds) {
      const plan = planOf(3, 3, 6, seed);
      const progress = [0, 1, 2].map((i) =>
        progressOf(plan, `rider ${i}`, 2 + i, (run) => i === 1 && run === 1),
      );
      const own = progress[1] as RiderProgress;
      const rest = replanRest(plan, own.rider, progress);
      const alone = aloneOf(
        plan,
        own,
        rest.map(({ position }) => position),
      );
      const cost = (order: readonly string[]): number => costOf(plan, progress, own.rider, order);
      if (cost(rest.map(({ arm }) => arm)) < 0.9 * cost(alone)) better += 1;
    }
    expect(better).toBeGreaterThan(seeds.length / 2);
  });

  it('of somebody who does not ride the plan is refused', () => {
    const plan = planOf(2, 1, 2);
    expect(() => replanRest(plan, 'nobody', [progressOf(plan, 'rider 0', 0, () => false)])).toThrowError(
      /rider/,
    );
  });
});

describe('the balance over all riders', () => {
  it('of Williams rows in mirror images is perfect in places and neighbours', () => {
    // 0 1 | 1 0 and 1 0 | 0 1: each at each place once, each behind the other once.
    const other = [1, 0, 0, 1].map((arm, i) => ({ arm, position: i + 1, counts: true }));
    const imbalance = restImbalance(2, [], [1, 2, 3, 4], [other]);
    expect(imbalance([0, 1, 1, 0])).toMatchObject({
      own: { linear: 0 },
      all: { linear: 0, quadratic: 0 },
      carryOver: 0,
    });
    expect(imbalance([1, 0, 0, 1]).carryOver).toBeCloseTo(0, 12);
    expect(imbalance([0, 1, 0, 1]).carryOver).toBeGreaterThan(0);
  });

  it('counts what a void run leaves behind, and not the void run', () => {
    const voided = [{ arm: 0, position: 1, counts: false }];
    const imbalance = restImbalance(2, voided, [2, 3], []);
    // 0 is ridden before 1, and 1 before 0: once each.
    expect(imbalance([1, 0])).toMatchObject({ carryOver: 0 });
    // 0 before 0 hands nothing to another, 0 before 1 does.
    expect(imbalance([0, 1]).carryOver).toBeGreaterThan(0);
  });
});
