import { gaugePascal } from '@loamledger/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BaselineCandidate, BaselineRequest } from './candidate.js';
import { chooseBaseline } from './choose.js';
import { nearestToFaster } from './towards-faster.js';

const STROKE = 0.16;
const PSI = 6895;

/** An invented unit: firmer with pressure and spacers, in the directions that the engine gives. */
function candidate(psi: number, spacers: number): BaselineCandidate {
  return {
    pressurePa: gaugePascal(psi * PSI),
    spacers,
    sagFraction: 0.18 * (80 / psi),
    bottomingLogHeight: -0.4 + 0.012 * (psi - 80) + 0.12 * (spacers - 2),
    travelAtMedian: Math.min(STROKE, 0.12 - 0.0004 * (psi - 80) - 0.004 * (spacers - 2)),
    travelAt95: Math.min(STROKE, 0.15 - 0.0005 * (psi - 80) - 0.006 * (spacers - 2)),
    earlyForce: 300 + 4 * (psi - 80) + 5 * (spacers - 2),
    diveTravel: 0.05 - 0.0002 * (psi - 80),
  };
}

const grid = Array.from({ length: 61 }, (_, i) => 60 + i).flatMap((psi) =>
  [0, 1, 2, 3, 4, 5].map((spacers) => candidate(psi, spacers)),
);

const request: BaselineRequest = {
  candidates: grid,
  limits: { minPressurePa: gaugePascal(65 * PSI), maxPressurePa: gaugePascal(110 * PSI), maxSpacers: 4 },
  sagBand: { min: 0.15, max: 0.2 },
  acceptedRisk: 0.05,
  wantedReserve: 0.012,
  stroke: STROKE,
  predictive: { weights: [1], means: [-0.8], sds: [0.25] },
};

/** The few numbers that a request is made of, so that a counterexample is short. */
const wishes = fc.record({
  low: fc.integer({ min: 40, max: 100 }),
  width: fc.integer({ min: 0, max: 60 }),
  maxSpacers: fc.integer({ min: 0, max: 6 }),
  acceptedRisk: fc.double({ min: 0, max: 0.5, noNaN: true }),
  wantedReserve: fc.double({ min: 0, max: 0.05, noNaN: true }),
  mean: fc.double({ min: -1.5, max: 0, noNaN: true }),
  current: fc.option(fc.tuple(fc.integer({ min: 30, max: 150 }), fc.integer({ min: 0, max: 6 }))),
});

type Wish = typeof wishes extends fc.Arbitrary<infer T> ? T : never;

const asRequest = ({
  low,
  width,
  maxSpacers,
  acceptedRisk,
  wantedReserve,
  mean,
  current,
}: Wish): BaselineRequest => ({
  ...request,
  limits: {
    minPressurePa: gaugePascal(low * PSI),
    maxPressurePa: gaugePascal((low + width) * PSI),
    maxSpacers,
  },
  acceptedRisk,
  wantedReserve,
  predictive: { weights: [1], means: [mean], sds: [0.25] },
  ...(current === null ? {} : { current: candidate(current[0], current[1]) }),
});

const insideLimits = (setUp: { pressurePa: number; spacers: number }, { limits }: BaselineRequest): boolean =>
  limits !== null &&
  setUp.pressurePa >= limits.minPressurePa &&
  setUp.pressurePa <= limits.maxPressurePa &&
  setUp.spacers <= limits.maxSpacers;

describe('whatever is asked', () => {
  it('nothing outside the limits is ever named: not the choice, nor an alternative, a step or the nearest', () => {
    fc.assert(
      fc.property(wishes, (wish) => {
        const asked = asRequest(wish);
        const choice = chooseBaseline(asked);
        const named =
          choice.status === 'recommended'
            ? [
                choice.chosen,
                ...choice.alternatives.map((alternative) => alternative.candidate),
                ...choice.steps,
              ]
            : choice.status === 'not feasible' && choice.nearest !== null
              ? [choice.nearest]
              : [];
        for (const setUp of named) expect(insideLimits(setUp, asked)).toBe(true);
      }),
    );
  });

  it('a recommendation keeps to the sag band and the accepted risk', () => {
    fc.assert(
      fc.property(wishes, (wish) => {
        const asked = asRequest(wish);
        const choice = chooseBaseline(asked);
        if (choice.status !== 'recommended') return;
        expect(choice.chosen.risk).toBeLessThanOrEqual(asked.acceptedRisk);
        expect(choice.chosen.sagFraction).toBeGreaterThanOrEqual(asked.sagBand.min);
        expect(choice.chosen.sagFraction).toBeLessThanOrEqual(asked.sagBand.max);
      }),
    );
  });

  it('accepting more risk never takes an answer away nor moves the nearest reserve further from the wanted one', () => {
    fc.assert(
      fc.property(wishes, fc.double({ min: 0, max: 0.5, noNaN: true }), (wish, more) => {
        const asked = asRequest(wish);
        const strict = chooseBaseline(asked);
        const loose = chooseBaseline({ ...asked, acceptedRisk: asked.acceptedRisk + more });
        expect(loose.counts.feasible).toBeGreaterThanOrEqual(strict.counts.feasible);
        if (strict.status !== 'recommended') return;
        expect(loose.status).toBe('recommended');
        if (loose.status !== 'recommended') return;
        const miss = (reserve: number): number => Math.abs(reserve - asked.wantedReserve);
        // Within the ring's reading error (2 mm) the more supple one wins instead.
        expect(miss(loose.chosen.reserveAt95)).toBeLessThanOrEqual(
          miss(strict.chosen.reserveAt95) + 0.002 + 1e-12,
        );
      }),
    );
  });

  it('no feasible set-up is nearer to the wanted reserve, but where both are within what a ring can tell', () => {
    fc.assert(
      fc.property(wishes, (wish) => {
        const asked = asRequest(wish);
        const choice = chooseBaseline(asked);
        if (choice.status !== 'recommended') return;
        const miss = ({ travelAt95 }: BaselineCandidate): number =>
          Math.abs(STROKE - travelAt95 - asked.wantedReserve);
        const isFeasible = (one: BaselineCandidate): boolean =>
          chooseBaseline({ ...asked, candidates: [one] }).status === 'recommended';
        const nearer = grid.filter((one) => miss(one) < miss(choice.chosen) - 5e-4 - 1e-12);
        if (miss(choice.chosen) > 0.002) expect(nearer.filter(isFeasible)).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });

  it('the order of the candidates does not matter', () => {
    fc.assert(
      fc.property(wishes, (wish) => {
        const asked = asRequest(wish);
        expect(chooseBaseline({ ...asked, candidates: [...grid].reverse() })).toEqual(chooseBaseline(asked));
      }),
    );
  });

  it('steps change one spacer and a tenth of the pressure at most, and end at the choice', () => {
    fc.assert(
      fc.property(wishes, (wish) => {
        const asked = asRequest(wish);
        const choice = chooseBaseline(asked);
        if (choice.status !== 'recommended' || asked.current === undefined) return;
        if (!insideLimits(asked.current, asked)) return;
        let from: { pressurePa: number; spacers: number } = asked.current;
        for (const step of choice.steps) {
          expect(Math.abs(step.spacers - from.spacers)).toBeLessThanOrEqual(1);
          // A tenth of the lower end, or 2 psi; snapping to a candidate at both ends of a step adds up to 1 psi each.
          const tenth = 0.1 * Math.min(asked.current.pressurePa, choice.chosen.pressurePa);
          expect(Math.abs(step.pressurePa - from.pressurePa)).toBeLessThanOrEqual(
            Math.max(tenth, 2 * PSI) + 2 * PSI,
          );
          from = step;
        }
        expect(from.pressurePa).toBe(choice.chosen.pressurePa);
        expect(from.spacers).toBe(choice.chosen.spacers);
      }),
    );
  });
});

describe('an answer', () => {
  it('is the most supple of those whose reserve cannot be told from the nearest', () => {
    const choice = chooseBaseline(request);
    if (choice.status !== 'recommended') throw new Error(choice.message);
    const feasible = grid.filter(
      (other) =>
        insideLimits(other, request) &&
        other.sagFraction >= 0.15 &&
        other.sagFraction <= 0.2 &&
        Math.abs(STROKE - other.travelAt95 - 0.012) <= 0.002,
    );
    expect(choice.chosen.earlyForce).toBe(Math.min(...feasible.map((other) => other.earlyForce)));
    expect(choice.chosen.risk).toBeLessThanOrEqual(0.05);
  });

  it('comes with alternatives and what each costs against it', () => {
    const choice = chooseBaseline(request);
    if (choice.status !== 'recommended') throw new Error(choice.message);
    const by = new Map(choice.alternatives.map((alternative) => [alternative.kind, alternative]));
    expect(by.get('softer')?.cost.earlyForce).toBeLessThan(0);
    expect(by.get('softer')?.cost.reserveAt95).toBeLessThan(0);
    expect(by.get('firmer')?.cost.risk).toBeLessThan(0);
    expect(by.get('fewer spacers')?.candidate.spacers).toBe(choice.chosen.spacers - 1);
    expect(by.get('fewer spacers')?.candidate.pressurePa).toBeGreaterThan(choice.chosen.pressurePa);
  });

  it('without limits is no recommendation at all', () => {
    const choice = chooseBaseline({ ...request, limits: null });
    expect(choice.status).toBe('no limits');
    expect(choice).not.toHaveProperty('chosen');
  });

  it('names the demand that no set-up meets, and the nearest inside the limits', () => {
    const choice = chooseBaseline({ ...request, predictive: { weights: [1], means: [1], sds: [0.25] } });
    if (choice.status !== 'not feasible') throw new Error(choice.status);
    expect(choice.unmet).toEqual(['risk']);
    expect(choice.nearest).not.toBeNull();
  });

  it('says so when the demands can be met each but not together', () => {
    // Risk asks for the firm end, sag for the soft one.
    const choice = chooseBaseline({ ...request, sagBand: { min: 0.21, max: 0.22 }, acceptedRisk: 1e-3 });
    if (choice.status !== 'not feasible') throw new Error(choice.status);
    expect(choice.counts.withinSagBand).toBeGreaterThan(0);
    expect(choice.counts.withinRisk).toBeGreaterThan(0);
    expect(choice.message).toMatch(/not all at once/);
  });

  it('has no nearest when no candidate is inside the limits', () => {
    const choice = chooseBaseline({ ...request, candidates: [] });
    expect(choice).toMatchObject({ status: 'not feasible', unmet: ['limits'], nearest: null });
  });

  it('dives no deeper under braking than allowed, where another set-up meets the rest', () => {
    const free = chooseBaseline(request);
    if (free.status !== 'recommended') throw new Error(free.message);
    const allowedDive = (free.chosen.diveTravel ?? 0) - 1e-3;
    const choice = chooseBaseline({ ...request, allowedDive });
    if (choice.status !== 'recommended') throw new Error(choice.message);
    expect(choice.chosen.diveTravel).toBeLessThanOrEqual(allowedDive);
    expect(choice.counts.feasible).toBe(free.counts.feasible);
  });

  it('says so where every set-up that meets sag and risk dives deeper than allowed', () => {
    const choice = chooseBaseline({ ...request, allowedDive: 0.001 });
    if (choice.status !== 'recommended') throw new Error(choice.message);
    expect(choice.chosen).toEqual((chooseBaseline(request) as { chosen: unknown }).chosen);
    expect(choice.reasons.at(-1)).toMatch(/No set-up that meets the other demands dives less/);
  });

  it('tells of every alternative what it costs', () => {
    const choice = chooseBaseline(request);
    if (choice.status !== 'recommended') throw new Error(choice.message);
    expect(choice.alternatives.length).toBeGreaterThan(0);
    for (const { kind, candidate: other, cost } of choice.alternatives) {
      expect(cost.diveTravel).toBeCloseTo((other.diveTravel ?? 0) - (choice.chosen.diveTravel ?? 0), 12);
      if (kind === 'softer') expect(cost.risk).toBeGreaterThan(0);
      if (kind === 'firmer') expect(cost.sagFraction).toBeLessThan(0);
      if (kind === 'firmer') expect(cost.earlyForce).toBeGreaterThan(0);
    }
  });

  it('needs no step when it is in the unit already', () => {
    const first = chooseBaseline(request);
    if (first.status !== 'recommended') throw new Error(first.message);
    const again = chooseBaseline({ ...request, current: first.chosen });
    expect(again).toMatchObject({ status: 'recommended', steps: [] });
  });

  it('refuses impossible input by name', () => {
    expect(() => chooseBaseline({ ...request, acceptedRisk: 2 })).toThrowError(
      /acceptedRisk is 2 \(probability\)/,
    );
    expect(() => chooseBaseline({ ...request, stroke: Number.NaN })).toThrowError(/stroke/);
    expect(() =>
      chooseBaseline({ ...request, candidates: [{ ...candidate(80, 2), bottomingLogHeight: Number.NaN }] }),
    ).toThrowError(/candidates\[0\].bottomingLogHeight/);
  });
});

describe('what was faster on time', () => {
  it('is taken as it is where it meets every demand', () => {
    const choice = chooseBaseline(request);
    if (choice.status !== 'recommended') throw new Error(choice.message);
    const { pressurePa, spacers } = choice.chosen;
    expect(nearestToFaster(choice.chosen, request)).toMatchObject({ pressurePa, spacers });
  });

  it('is approached only as far as limits, sag and risk allow', () => {
    fc.assert(
      fc.property(
        wishes,
        fc.integer({ min: 40, max: 140 }),
        fc.integer({ min: 0, max: 6 }),
        (wish, psi, spacers) => {
          const asked = asRequest(wish);
          const towards = nearestToFaster(candidate(psi, spacers), asked);
          expect(towards !== undefined).toBe(chooseBaseline(asked).counts.feasible > 0);
          if (towards === undefined) return;
          expect(insideLimits(towards, asked)).toBe(true);
          expect(towards.risk).toBeLessThanOrEqual(asked.acceptedRisk);
          expect(towards.sagFraction).toBeGreaterThanOrEqual(asked.sagBand.min);
          expect(towards.sagFraction).toBeLessThanOrEqual(asked.sagBand.max);
        },
      ),
    );
  });
});
