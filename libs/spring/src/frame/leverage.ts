import type { Radian } from '@loamledger/units';
import { requireNumber, SpringInputError } from '../numerics/input-error.js';
import { monotoneCubic } from '../numerics/monotone-cubic.js';

/** How the wheel moves with a spring: wheel travel z against fork or shock travel s. */
export interface LeverageCurve {
  /** LR(s) = dz/ds, 1. */
  ratio(travel: number): number;
  /** dLR/ds, 1/m. */
  slope(travel: number): number;
  /** z(s), m. */
  wheelTravel(travel: number): number;
}

/** One row of a frame's leverage table. */
export interface LeverageRow {
  /** Shock travel, m. */
  readonly shockTravel: number;
  /** Wheel travel per shock travel there, 1. */
  readonly leverageRatio: number;
}

/** More than any frame has, 1. */
const HIGHEST_RATIO = 10;
/** The last row may miss the end of the stroke by rounding of millimetres in a table, m. */
const STROKE_ROUNDING = 1e-6;
/** Rows between which a curve can be told; more than a frame's table ever has. */
const FEWEST_ROWS = 2;
const MOST_ROWS = 500;

/**
 * Leverage of a fork: vertical wheel travel per travel along the fork axis, 1.
 *
 * LR = sin θ, θ the head angle from the ground; docs/equations/frame.md#fork. Constant over the stroke.
 * @throws SpringInputError for an angle outside 0…π/2.
 */
export function forkLeverage(headAngle: Radian): LeverageCurve {
  requireNumber('headAngle', headAngle, 'rad', { above: 0, atMost: Math.PI / 2 });
  const leverage = Math.sin(headAngle);
  return {
    ratio: () => leverage,
    slope: () => 0,
    wheelTravel: (travel) => leverage * travel,
  };
}

/**
 * Leverage of a frame from its table: wheel travel per shock travel, 1.
 *
 * Monotone piecewise cubic through the rows, z = ∫LR ds piece by piece; docs/equations/frame.md#table.
 * @param rows shock travel rising strictly from 0 to at least the stroke, ratios > 0.
 * @param stroke of the shock, m.
 * @throws SpringInputError naming the row that breaks this.
 */
export function leverageFromTable(rows: readonly LeverageRow[], stroke: number): LeverageCurve {
  validateRows(rows, stroke);
  const curve = monotoneCubic(
    rows.map((row) => row.shockTravel),
    rows.map((row) => row.leverageRatio),
  );
  return { ratio: curve.value, slope: curve.slope, wheelTravel: curve.integral };
}

function validateRows(rows: readonly LeverageRow[], stroke: number): void {
  requireNumber('stroke', stroke, 'm', { above: 0 });
  requireNumber('rows.length', rows.length, '(count)', { atLeast: FEWEST_ROWS, atMost: MOST_ROWS });
  let previous = -Infinity;
  rows.forEach(({ shockTravel, leverageRatio }, i) => {
    const bounds = i === 0 ? { atLeast: 0, atMost: 0 } : { above: previous };
    requireNumber(`rows[${i}].shockTravel`, shockTravel, 'm', bounds);
    requireNumber(`rows[${i}].leverageRatio`, leverageRatio, '1', { above: 0, atMost: HIGHEST_RATIO });
    previous = shockTravel;
  });
  if (previous < stroke - STROKE_ROUNDING) {
    throw new SpringInputError(
      `rows[${rows.length - 1}].shockTravel`,
      previous,
      'm',
      `at least the stroke, ${stroke}`,
    );
  }
}
