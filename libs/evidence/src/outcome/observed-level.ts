import type { ReadingKind } from '../demand/reading.js';
import { EvidenceInputError, requireFinite, requireNotNegative } from '../errors.js';
import { logNormalCdf } from '../numerics/normal.js';
import type { ExpectedHit } from './expected-hit.js';

/** One ring reading on the set-up, as a log hit height (natural logarithm of metres) or its bound. */
export interface ObservedHit {
  readonly kind: ReadingKind;
  readonly logHeight: number;
  /** Standard deviation of the reading error, log metres, ≥ 0. */
  readonly readingSd: number;
}

/** How far the runs on a set-up are from what was expected of them. */
export interface LevelDifference {
  readonly status: 'compared' | 'no readings' | 'bounds alone' | 'did not converge';
  /** Observed less expected level, log metres; null unless compared. */
  readonly difference: number | null;
  /** The same in standard errors; null unless compared. */
  readonly standardErrors: number | null;
  readonly iterations: number;
}

const MOST_STEPS = 50;
/** Newton's method is done when a step is this share of the scatter between runs. */
const TOLERANCE = 1e-10;
/** A step of more than this many standard deviations of a run is cut: far out a bound's curve is flat. */
const LONGEST_STEP = 3;

/**
 * Observed level of the hit heights on a set-up against the expected one, in standard errors.
 *
 * With σᵢ² = runSd² + readingSdᵢ² the level m̂ maximises Σ log φ((yᵢ − m)/σᵢ) over readings and Σ log Φ(±(m − yᵢ)/σᵢ)
 * over bounds (docs/evidence/outcomes.md). Without bounds it is the weighted mean. The standard error is
 * √(levelSd² + 1/I), I the observed information at m̂. Positive: hits were higher, more travel was used.
 * No reading, and bounds without any exact reading, are statuses. Throws EvidenceInputError for values that are not
 * finite, a negative sd, or readings without any error at all (runSd and readingSd 0).
 */
export function observedLevel(expected: ExpectedHit, readings: readonly ObservedHit[]): LevelDifference {
  requireReadings(expected, readings);
  const none = { difference: null, standardErrors: null, iterations: 0 };
  if (readings.length === 0) return { status: 'no readings', ...none };
  if (!readings.some(({ kind }) => kind === 'exact')) return { status: 'bounds alone', ...none };
  let level = weightedMean(expected.runSd, readings);
  for (let step = 1; step <= MOST_STEPS; step += 1) {
    const { slope, information } = likelihood(expected.runSd, readings, level);
    const longest = LONGEST_STEP * (expected.runSd + Math.sqrt(1 / information));
    const move = Math.max(-longest, Math.min(longest, slope / information));
    level += move;
    if (Math.abs(move) <= TOLERANCE * Math.sqrt(1 / information)) {
      const difference = level - expected.logMean;
      const standardErrors = difference / Math.sqrt(expected.levelSd ** 2 + 1 / information);
      return { status: 'compared', difference, standardErrors, iterations: step };
    }
  }
  return { status: 'did not converge', ...none, iterations: MOST_STEPS };
}

/** Weighted mean of the exact readings: there is at least one. */
function weightedMean(runSd: number, readings: readonly ObservedHit[]): number {
  let weights = 0;
  let sum = 0;
  for (const { kind, logHeight, readingSd } of readings) {
    if (kind !== 'exact') continue;
    const weight = 1 / (runSd ** 2 + readingSd ** 2);
    weights += weight;
    sum += weight * logHeight;
  }
  return sum / weights;
}

/** First derivative of the log likelihood of the level, and the negative of the second. */
function likelihood(runSd: number, readings: readonly ObservedHit[], level: number) {
  let slope = 0;
  let information = 0;
  for (const { kind, logHeight, readingSd } of readings) {
    const variance = runSd ** 2 + readingSd ** 2;
    if (kind === 'exact') {
      slope += (logHeight - level) / variance;
      information += 1 / variance;
      continue;
    }
    const side = kind === 'at-least' ? 1 : -1;
    const bound = logNormalCdf((side * (level - logHeight)) / Math.sqrt(variance));
    slope += (side * bound.slope) / Math.sqrt(variance);
    information += bound.curvature / variance;
  }
  return { slope, information };
}

function requireReadings(expected: ExpectedHit, readings: readonly ObservedHit[]): void {
  requireFinite('expected.logMean', expected.logMean, 'log m');
  requireNotNegative('expected.levelSd', expected.levelSd, 'log m');
  requireNotNegative('expected.runSd', expected.runSd, 'log m');
  for (const [i, { logHeight, readingSd }] of readings.entries()) {
    requireFinite(`readings[${i}].logHeight`, logHeight, 'log m');
    requireNotNegative(`readings[${i}].readingSd`, readingSd, 'log m');
    if (readingSd === 0 && expected.runSd === 0) {
      throw new EvidenceInputError(
        `readings[${i}].readingSd`,
        0,
        'log m',
        '> 0 where runs do not scatter at all',
      );
    }
  }
}
