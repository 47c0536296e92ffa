import type { GaugePascal } from '@loamledger/units';
import { requireNumber } from '../numerics/input-error.js';
import { leastSquares } from '../numerics/least-squares.js';
import { NORMAL_95 } from '../numerics/normal.js';
import { entry } from '../numerics/entry.js';
import { airSpring } from '../unit/air-spring.js';
import { dropTestWarnings, type DropTestWarning } from './drop-test-checks.js';
import { HeightSearch } from './height-search.js';
import { FULL_TRAVEL_MARGIN } from './hit-height.js';
import { HIGHEST_DROP } from './landing.js';
import { sceneWith, type Scene } from './scene.js';

/** One landing of a drop test, in the order of trying. */
export interface DropLanding {
  readonly spacers: number;
  readonly gaugePressure: GaugePascal;
  /** Measured height of the drop to flat, m. */
  readonly dropHeight: number;
  /** By the ring, m. */
  readonly travelUsed: number;
}

/** A factor with its 90 % interval. */
interface FittedFactor {
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
  /** Standard uncertainty of its logarithm. */
  readonly logSd: number;
}

/** All landings of one set-up from one height against the fit. */
export interface DropSetUp {
  readonly spacers: number;
  readonly gaugePressure: GaugePascal;
  readonly dropHeight: number;
  readonly count: number;
  /** Mean travel read, m. */
  readonly read: number;
  /** Travel by the fit, m; at most the stroke. */
  readonly predicted: number;
  /** (read − predicted) over the standard uncertainty of the mean. */
  readonly residual: number;
}

export type DropTestResult =
  | {
      readonly status: 'fitted';
      /** Part of the drop that this rider and bike put into the spring: hit height over drop height. */
      readonly absorption: FittedFactor;
      /** Damping over that entered; told only where the landings say more than was known before. */
      readonly damping: FittedFactor & { readonly isTold: boolean };
      readonly setUps: readonly DropSetUp[];
      /** Scatter of the readings over the ring's error, 1. */
      readonly scatter: number;
      readonly warnings: readonly DropTestWarning[];
      /** Readings too near full travel to tell a height; left out of the fit. */
      readonly atFullTravel: number;
    }
  | {
      readonly status: 'refused';
      readonly reason: 'too-few-readings' | 'not-identifiable';
      readonly message: string;
    };

/** Local error of a step; a reading's error is some 10,000 times larger. */
const FIT_TOLERANCE = 1e-7;
/** First guess of the part of a drop that goes into one end's spring; the fit moves from there. */
const FIRST_ABSORPTION = 0.5;
const LOG_STEP = 1e-3;
/** Damping counts as told when the landings at least halve what was known of it before. */
const TOLD = 0.5;
const FEWEST_READINGS = 2;

/**
 * Fits a drop test: what part of the drop goes into the spring (1), and the damping where the landings tell it.
 *
 * travel(α·h, δ·damping) against the readings by least squares over ln α and ln δ; δ known beforehand to `dampingLogSd`:
 * docs/equations/answers.md#drop-test. Readings at full travel are left out. Intervals widen with scatter above the ring's.
 * @param scene unit, place and end; its pressure and spacers do not matter. @param readingSd of one ring reading, m.
 * @param dampingLogSd standard uncertainty of the logarithm of the damping as entered, 1.
 * @throws SpringInputError for landings that cannot be.
 */
export function fitDropTest(
  scene: Scene,
  landings: readonly DropLanding[],
  readingSd: number,
  dampingLogSd: number,
): DropTestResult {
  validate(scene, landings, readingSd, dampingLogSd);
  const usable = landings.filter(
    ({ travelUsed }) => scene.unit.stroke - travelUsed > FULL_TRAVEL_MARGIN * readingSd,
  );
  if (usable.length < FEWEST_READINGS) {
    return refused('too-few-readings', 'at least two landings short of full travel are needed');
  }
  const fit = leastSquares({
    start: [Math.log(FIRST_ABSORPTION), 0],
    steps: [LOG_STEP, LOG_STEP],
    residuals: (parameters) => {
      const predict = predictor(scene, parameters);
      const readings = usable.map((landing) => (predict(landing) - landing.travelUsed) / readingSd);
      return [...readings, entry(parameters, 1) / dampingLogSd];
    },
  });
  if (fit.status !== 'found') {
    return refused(
      'not-identifiable',
      'these landings do not tell how much of the drop goes into the spring',
    );
  }
  const squares = fit.residuals.reduce((sum, r) => sum + r * r, 0);
  const scatter = Math.sqrt(squares / (usable.length - 1));
  const logSd = (i: number) => Math.sqrt(entry(entry(fit.covariance, i), i)) * Math.max(1, scatter);
  const predict = predictor(scene, fit.parameters);
  return {
    status: 'fitted',
    absorption: factor(entry(fit.parameters, 0), logSd(0)),
    damping: { ...factor(entry(fit.parameters, 1), logSd(1)), isTold: logSd(1) < TOLD * dampingLogSd },
    setUps: setUps(scene, usable, predict, readingSd),
    scatter,
    warnings: dropTestWarnings(
      usable.map((landing) => ({
        setUp: key(landing),
        predicted: predict(landing),
        residual: (landing.travelUsed - predict(landing)) / readingSd,
      })),
      scatter,
    ),
    atFullTravel: landings.length - usable.length,
  };
}

function refused(reason: 'too-few-readings' | 'not-identifiable', message: string): DropTestResult {
  return { status: 'refused', reason, message };
}

function factor(logarithm: number, logSd: number): FittedFactor {
  const value = Math.exp(logarithm);
  const spread = Math.exp(NORMAL_95 * logSd);
  return { value, lower: value / spread, upper: value * spread, logSd };
}

/** Travel that a landing should use, for ln α and ln δ; each set-up is computed once. */
function predictor(scene: Scene, parameters: readonly number[]): (landing: DropLanding) => number {
  const absorption = Math.exp(entry(parameters, 0));
  const { unit, end, fill } = sceneWith(scene, { logDamping: entry(parameters, 1) });
  const known = new Map<string, number>();
  return (landing) => {
    const setUp = key(landing);
    const before = known.get(setUp);
    if (before !== undefined) return before;
    const { spacers, gaugePressure, dropHeight } = landing;
    const spring = airSpring(unit, { ...fill, spacers, gaugePressure });
    const travel = new HeightSearch(spring, end, FIT_TOLERANCE).travel(absorption * dropHeight);
    known.set(setUp, travel);
    return travel;
  };
}

function key({ spacers, gaugePressure, dropHeight }: DropLanding): string {
  return `${spacers}/${gaugePressure}/${dropHeight}`;
}

function setUps(
  scene: Scene,
  landings: readonly DropLanding[],
  predict: (landing: DropLanding) => number,
  readingSd: number,
): DropSetUp[] {
  const groups = new Map<string, DropLanding[]>();
  for (const landing of landings) {
    const group = groups.get(key(landing)) ?? [];
    groups.set(key(landing), [...group, landing]);
  }
  return [...groups.values()].map((group) => {
    const { spacers, gaugePressure, dropHeight } = entry(group, 0);
    const read = group.reduce((sum, { travelUsed }) => sum + travelUsed, 0) / group.length;
    const predicted = Math.min(scene.unit.stroke, predict(entry(group, 0)));
    const residual = ((read - predicted) * Math.sqrt(group.length)) / readingSd;
    return { spacers, gaugePressure, dropHeight, count: group.length, read, predicted, residual };
  });
}

function validate(
  scene: Scene,
  landings: readonly DropLanding[],
  readingSd: number,
  dampingLogSd: number,
): void {
  requireNumber('readingSd', readingSd, 'm', { above: 0, below: scene.unit.stroke });
  requireNumber('dampingLogSd', dampingLogSd, '1', { above: 0 });
  landings.forEach(({ spacers, gaugePressure, dropHeight, travelUsed }, i) => {
    airSpring(scene.unit, { ...scene.fill, spacers, gaugePressure });
    requireNumber(`landings[${i}].dropHeight`, dropHeight, 'm', { above: 0, atMost: HIGHEST_DROP });
    requireNumber(`landings[${i}].travelUsed`, travelUsed, 'm', { atLeast: 0, atMost: scene.unit.stroke });
  });
}
