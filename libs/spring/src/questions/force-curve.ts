import { HEAT_CAPACITY_RATIO, ISOTHERMAL, pressureAt } from '../gas/chamber.js';
import { requireWhole } from '../numerics/input-error.js';
import type { AirSpring } from '../unit/air-spring.js';
import { polytropicEnergy, polytropicForce, polytropicStiffness } from '../unit/force.js';

export interface ForceCurvePoint {
  /** m. */
  readonly travel: number;
  /** Gas and bumper, N. */
  readonly force: number;
  /** N/m. */
  readonly stiffness: number;
  /** Absolute, of the positive chamber, Pa. */
  readonly positivePressure: number;
}

/** Force over travel, sampled evenly from full extension to the end of the stroke. */
export interface ForceCurve {
  readonly points: readonly ForceCurvePoint[];
  /** Force at 95 % of the stroke over force at 50 %, 1. */
  readonly progression: number;
  /** J. */
  readonly energyToFullTravel: number;
}

/** Where progression compares forces, as parts of the stroke: deep, but short of most bumpers, and the middle. */
const DEEP = 0.95;
const MIDDLE = 0.5;
const MOST_POINTS = 10_000;

/** Curve of the settled spring: isothermal, forces in N over travel in m; docs/equations/spring.md#force. */
export function settledCurve(spring: AirSpring, pointCount: number): ForceCurve {
  return curve(spring, pointCount, ISOTHERMAL);
}

/** Curve of a hit so fast that no heat passes: adiabatic from full extension, N over m; docs/equations/spring.md#force. */
export function fastCurve(spring: AirSpring, pointCount: number): ForceCurve {
  return curve(spring, pointCount, HEAT_CAPACITY_RATIO);
}

function curve(spring: AirSpring, pointCount: number, exponent: number): ForceCurve {
  requireWhole('pointCount', pointCount, 2, MOST_POINTS);
  const points = Array.from({ length: pointCount }, (_, i) => {
    const travel = (spring.stroke * i) / (pointCount - 1);
    return {
      travel,
      force: polytropicForce(spring, travel, exponent),
      stiffness: polytropicStiffness(spring, travel, exponent),
      positivePressure: pressureAt(spring.positive, travel, exponent),
    };
  });
  return {
    points,
    progression:
      polytropicForce(spring, DEEP * spring.stroke, exponent) /
      polytropicForce(spring, MIDDLE * spring.stroke, exponent),
    energyToFullTravel: polytropicEnergy(spring, spring.stroke, exponent),
  };
}
