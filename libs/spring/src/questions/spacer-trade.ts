import { gaugePascal, type GaugePascal } from '@loamledger/units';
import { requireSprungEnd, type SprungEnd } from '../frame/sprung-end.js';
import { requireNumber } from '../numerics/input-error.js';
import { findRoot, type Point } from '../numerics/root.js';
import type { AirSpringUnit } from '../unit/air-spring-unit.js';
import { airSpring, HIGHEST_GAUGE_PRESSURE, type SpringFill } from '../unit/air-spring.js';
import { springForce } from '../unit/force.js';
import { pressureForForce, type PressureAnswer } from '../unit/pressure-for-force.js';
import { HeightSearch } from './height-search.js';
import { HIGHEST_DROP } from './landing.js';
import { pressureForSag, sag } from './sag.js';

/** Pressure that keeps one property when the spacer count changes, or why none does. */
export type TradeTarget =
  | {
      readonly status: 'found';
      readonly gaugePressure: GaugePascal;
      /** Against the present pressure, Pa; negative if air comes out. */
      readonly change: number;
    }
  | { readonly status: 'out-of-reach'; readonly message: string };

/** The three pressures of a spacer trade, side by side. */
export interface SpacerTrade {
  /** Keeps the travel used by the hit. */
  readonly peakTravel: TradeTarget;
  /** Keeps the settled force in the middle of the stroke. */
  readonly midStroke: TradeTarget;
  /** Keeps the sag. */
  readonly sag: TradeTarget;
}

/** Lower end of the search for a pressure, Pa gauge: an all but empty spring. */
const LOWEST_GAUGE_PRESSURE = 1e3;
const BRACKET_FACTOR = 1.3;
/** Local error of a step: keeps the pressure found within 1e-6 psi of that of the exact landing. */
const TRADE_TOLERANCE = 1e-9;
/** About 1e-8 psi; far below any gauge, Pa. */
const PRESSURE_TOLERANCE = 1e-4;

/**
 * Pressures (Pa gauge) that keep peak travel, mid-stroke force or sag when the spacer count changes.
 *
 * A spacer raises the force little early and much late in the stroke, so keeping a late property takes more air out
 * than keeping an early one; docs/equations/answers.md#spacer-trade.
 * @param fill the present one. @param spacers the count to change to. @param height of the hit whose travel is kept, m.
 * @throws SpringInputError for a spacer count the unit cannot take.
 */
export function spacerTrade(
  unit: AirSpringUnit,
  fill: SpringFill,
  end: SprungEnd,
  spacers: number,
  height: number,
): SpacerTrade {
  requireSprungEnd(end);
  requireNumber('height', height, 'm', { atLeast: 0, atMost: HIGHEST_DROP });
  const now = airSpring(unit, fill);
  const changed = { ...fill, spacers };
  airSpring(unit, changed);
  const middle = unit.stroke / 2;
  const present = sag(now, end);
  return {
    peakTravel: keepPeakTravel(unit, fill, changed, end, height),
    midStroke: target(fill, pressureForForce(unit, changed, middle, springForce(now, middle))),
    sag:
      present.status === 'settled'
        ? target(fill, pressureForSag(unit, changed, end, present.fraction))
        : { status: 'out-of-reach', message: `there is no sag to keep: ${present.status}` },
  };
}

function target(fill: SpringFill, answer: PressureAnswer): TradeTarget {
  if (answer.status === 'out-of-reach') return answer;
  const { gaugePressure } = answer;
  return { status: 'found', gaugePressure, change: gaugePressure - fill.gaugePressure };
}

function keepPeakTravel(
  unit: AirSpringUnit,
  fill: SpringFill,
  changed: SpringFill,
  end: SprungEnd,
  height: number,
): TradeTarget {
  const travelWith = (from: SpringFill, gauge: number) => {
    const spring = airSpring(unit, { ...from, gaugePressure: gaugePascal(gauge) });
    return new HeightSearch(spring, end, TRADE_TOLERANCE).travel(height);
  };
  const kept = travelWith(fill, fill.gaugePressure);
  if (kept > unit.stroke) return { status: 'out-of-reach', message: 'the hit bottoms as it is' };
  const excess = (gauge: number) => travelWith(changed, gauge) - kept;
  const bracket = pressureBracket(excess, fill.gaugePressure);
  if (bracket === undefined) return { status: 'out-of-reach', message: 'no pressure keeps this travel' };
  const root = findRoot(excess, ...bracket, PRESSURE_TOLERANCE);
  if (root.status !== 'found') return { status: 'out-of-reach', message: 'the search did not converge' };
  return { status: 'found', gaugePressure: gaugePascal(root.x), change: root.x - fill.gaugePressure };
}

/** Two pressures around the root of a function that falls with pressure, from a first guess outwards. */
function pressureBracket(f: (gauge: number) => number, guess: number): [Point, Point] | undefined {
  let here = { x: guess, y: f(guess) };
  const upwards = here.y > 0;
  for (;;) {
    const x = upwards
      ? Math.min(HIGHEST_GAUGE_PRESSURE, here.x * BRACKET_FACTOR)
      : Math.max(LOWEST_GAUGE_PRESSURE, here.x / BRACKET_FACTOR);
    if (x === here.x) return undefined;
    const next = { x, y: f(x) };
    if (next.y > 0 !== upwards) return [here, next];
    here = next;
  }
}
