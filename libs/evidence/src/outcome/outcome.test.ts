import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitDemand } from '../demand/fit.js';
import { predictDemand } from '../demand/predict.js';
import { summaryOfMixture } from '../demand/mixture.js';
import { EvidenceInputError } from '../errors.js';
import { uniformNumbers } from '../numerics/random.js';
import { bottomOutTails } from './bottom-outs.js';
import { expectedHit, type ExpectedHit } from './expected-hit.js';
import { judgeOutcome } from './judge-outcome.js';
import { observedLevel, type ObservedHit } from './observed-level.js';

const EXPECTED: ExpectedHit = { logMean: -0.7, levelSd: 0.1, runSd: 0.2 };
const exact = (logHeight: number, readingSd = 0.05): ObservedHit => ({ kind: 'exact', logHeight, readingSd });
const logHeight = fc.double({ min: -2, max: 1, noNaN: true });
const readingSd = fc.double({ min: 0, max: 0.3, noNaN: true });

describe('the expectation of a fit', () => {
  it('keeps mean and variance of the prediction, and splits off what differs from run to run', () => {
    const readings = [0.4, 0.5, 0.45, 0.7, 0.65].map((height, i) => ({
      riderId: i % 2 === 0 ? 'a' : 'b',
      trackId: i < 3 ? 't' : 'u',
      logHeight: Math.log(height),
      kind: 'exact' as const,
      readingSd: 0.05,
    }));
    const fit = fitDemand(readings);
    for (const who of [
      { riderId: 'a', trackId: 't' },
      { riderId: 'new', trackId: 'unseen' },
    ]) {
      const expected = expectedHit(fit, who);
      const whole = summaryOfMixture(predictDemand(fit, who));
      // Sums of some 300 parts in double precision.
      expect(expected.logMean).toBeCloseTo(whole.mean, 12);
      expect(Math.hypot(expected.levelSd, expected.runSd)).toBeCloseTo(whole.sd, 12);
      expect(expected.levelSd).toBeGreaterThan(0);
    }
  });
});

describe('the observed level', () => {
  it('is the weighted mean where every reading tells the height', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(logHeight, readingSd), { minLength: 1, maxLength: 12 }), (drawn) => {
        const readings = drawn.map(([height, sd]) => exact(height, sd));
        const weights = readings.map((reading) => 1 / (EXPECTED.runSd ** 2 + reading.readingSd ** 2));
        const sum = weights.reduce((total, weight) => total + weight, 0);
        const mean =
          readings.reduce((total, reading, i) => total + (weights[i] ?? 0) * reading.logHeight, 0) / sum;
        const { difference, standardErrors } = observedLevel(EXPECTED, readings);
        // Newton's method stops at 1e-10 of a standard error.
        expect(difference).toBeCloseTo(mean - EXPECTED.logMean, 9);
        expect(standardErrors).toBeCloseTo(
          (mean - EXPECTED.logMean) / Math.sqrt(EXPECTED.levelSd ** 2 + 1 / sum),
          8,
        );
      }),
    );
  });

  it('rises with a bound from below, falls with one from above, and neither by more than a reading there', () => {
    fc.assert(
      fc.property(fc.array(logHeight, { minLength: 1, maxLength: 6 }), logHeight, (heights, at) => {
        const readings = heights.map((height) => exact(height));
        const alone = observedLevel(EXPECTED, readings).difference ?? NaN;
        const bounded = (kind: ObservedHit['kind']) =>
          observedLevel(EXPECTED, [...readings, { kind, logHeight: at, readingSd: 0.05 }]).difference ?? NaN;
        expect(bounded('at-least')).toBeGreaterThanOrEqual(alone - 1e-9);
        expect(bounded('at-most')).toBeLessThanOrEqual(alone + 1e-9);
      }),
    );
  });

  it('does not move for a bound that is met anyhow', () => {
    const readings = [exact(-0.6), exact(-0.8)];
    const alone = observedLevel(EXPECTED, readings);
    // Thirty standard deviations below the level: the bound says nothing.
    const bounded = observedLevel(EXPECTED, [
      ...readings,
      { kind: 'at-least', logHeight: -7, readingSd: 0.05 },
    ]);
    expect(bounded.difference).toBeCloseTo(alone.difference ?? NaN, 12);
  });

  it('is a standard normal deviate where the expectation is true', () => {
    // 4,000 draws: the standard deviation of a mean of squares of normal deviates is √(2/4000) = 0.022; four of them.
    const random = uniformNumbers(7);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const squares = Array.from({ length: 4_000 }, () => {
      const level = EXPECTED.logMean + EXPECTED.levelSd * normal();
      const readings = Array.from({ length: 6 }, () => {
        const height = level + EXPECTED.runSd * normal() + 0.05 * normal();
        // A hit beyond this height uses all the travel.
        return height > -0.4 ? { ...exact(-0.4), kind: 'at-least' as const } : exact(height);
      });
      const { standardErrors } = observedLevel(EXPECTED, readings);
      return (standardErrors ?? 0) ** 2;
    });
    const mean = squares.reduce((sum, square) => sum + square, 0) / squares.length;
    expect(Math.abs(mean - 1)).toBeLessThan(0.09);
  });

  it('is a status without readings, and with bounds alone', () => {
    expect(observedLevel(EXPECTED, [])).toMatchObject({ status: 'no readings', standardErrors: null });
    const bound = { kind: 'at-least', logHeight: -0.5, readingSd: 0.05 } as const;
    expect(observedLevel(EXPECTED, [bound, bound])).toMatchObject({
      status: 'bounds alone',
      difference: null,
    });
  });

  it('refuses what cannot be', () => {
    expect(() => observedLevel(EXPECTED, [exact(Number.NaN)])).toThrow(EvidenceInputError);
    expect(() => observedLevel(EXPECTED, [exact(0, -1)])).toThrow(EvidenceInputError);
    expect(() => observedLevel({ ...EXPECTED, runSd: 0 }, [exact(0, 0)])).toThrow(EvidenceInputError);
  });
});

describe('bottom-outs against the risk', () => {
  it('are the exact binomial tails where the level is known', () => {
    // By hand: P(X ≥ 2) of 4 at 0.1 = 1 − 0.9⁴ − 4·0.1·0.9³ = 0.0523; P(X ≤ 2) = 1 − 4·0.1³·0.9 − 0.1⁴ = 0.9963.
    const tails = bottomOutTails({ levelSd: 0, runSd: 0.2 }, 0.1, 2, 4);
    expect(tails.asMany).toBeCloseTo(0.0523, 12);
    expect(tails.asFew).toBeCloseTo(0.9963, 12);
  });

  it('overlap by exactly the chance of the count itself, and keep the risk for a single run', () => {
    const risk = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    const sd = fc.double({ min: 0.05, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(risk, sd, sd, fc.integer({ min: 1, max: 30 }), (chance, levelSd, runSd, runs) => {
        const spread = { levelSd, runSd };
        // Truncation at six standard deviations (2e-9), and the rule where p(u) is steepest.
        expect(bottomOutTails(spread, chance, 1, 1).asMany).toBeCloseTo(chance, 6);
        const k = Math.floor(runs / 2);
        const here = bottomOutTails(spread, chance, k, runs);
        expect(here.asFew + bottomOutTails(spread, chance, k + 1, runs).asMany).toBeCloseTo(1, 9);
      }),
    );
  });

  it('surprise less where the level was not known: runs on one set-up go wrong together', () => {
    const known = bottomOutTails({ levelSd: 0, runSd: 0.2 }, 0.05, 4, 10).asMany;
    const unknown = bottomOutTails({ levelSd: 0.3, runSd: 0.2 }, 0.05, 4, 10).asMany;
    expect(unknown).toBeGreaterThan(10 * known);
  });

  it('refuses more bottom-outs than runs, and a risk beyond 1', () => {
    expect(() => bottomOutTails(EXPECTED, 0.1, 3, 2)).toThrow(EvidenceInputError);
    expect(() => bottomOutTails(EXPECTED, 1.1, 1, 2)).toThrow(EvidenceInputError);
  });
});

describe('the verdict on a decision', () => {
  const level = (standardErrors: number) =>
    ({ status: 'compared', difference: 0.1, standardErrors, iterations: 3 }) as const;
  const unknown = { runs: 0, bottomed: 0, tails: null };

  it('says in a sentence whether travel is as expected', () => {
    const judge = (errors: number, readings = 6) =>
      judgeOutcome({ readings, level: level(errors), bottomOuts: unknown });
    expect(judge(1.9)).toEqual({
      verdict: 'as expected',
      sentence: '6 runs: travel as expected (1.9 standard errors more).',
    });
    expect(judge(-0.44).sentence).toBe('6 runs: travel as expected (0.4 standard errors less).');
    expect(judge(2.4).sentence).toBe('6 runs: uses more travel than expected: 2.4 standard errors.');
    expect(judge(-3.12).sentence).toBe('6 runs: uses less travel than expected: 3.1 standard errors.');
    expect(judge(0.2, 1).sentence).toBe(
      '1 run: travel as expected, as far as so few can tell (0.2 standard errors more).',
    );
  });

  it('counts bottom-outs beside it', () => {
    const judge = (bottomed: number, runs: number) =>
      judgeOutcome({
        readings: runs,
        level: level(0),
        bottomOuts: {
          runs,
          bottomed,
          tails: bottomOutTails({ levelSd: 0, runSd: 0.2 }, 0.05, bottomed, runs),
        },
      }).sentence;
    expect(judge(4, 6)).toBe(
      '6 runs: travel as expected (0.0 standard errors). 4 of 6 runs bottomed out, more than expected.',
    );
    expect(judge(0, 6)).toBe('6 runs: travel as expected (0.0 standard errors).');
    expect(judge(1, 6)).toContain('within what was expected');
  });

  it('cannot tell without a reading', () => {
    const none = { status: 'no readings', difference: null, standardErrors: null, iterations: 0 } as const;
    expect(judgeOutcome({ readings: 0, level: none, bottomOuts: unknown }).verdict).toBe('cannot tell');
  });
});
