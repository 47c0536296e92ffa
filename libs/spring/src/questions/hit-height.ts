import { gaugePascal } from '@loamledger/units';
import { requireSprungEnd, type SprungEnd } from '../frame/sprung-end.js';
import { requireNumber } from '../numerics/input-error.js';
import { NORMAL_95 } from '../numerics/normal.js';
import { airSpring, type AirSpring } from '../unit/air-spring.js';
import { HeightSearch } from './height-search.js';

/** A ring reading: travel used, with its standard uncertainty, m along the fork axis or the shock shaft. */
export interface RingReading {
  readonly travelUsed: number;
  readonly readingSd: number;
}

/** Standard uncertainties of what the hit height is computed from. */
export interface HitHeightUncertainty {
  /** Of the gauge pressure, Pa. */
  readonly gaugeSd: number;
  /** Of the sprung mass, kg. */
  readonly massSd: number;
}

interface LogSdParts {
  readonly reading: number;
  readonly gauge: number;
  readonly mass: number;
}

/** Drop to flat that would use the travel of a ring reading, with a 90 % interval. */
export interface SolvedHitHeight {
  readonly status: 'solved';
  /**
   * exact: the reading tells the height; at-least: it is too near full travel to tell from a bottom-out;
   * at-most: no more than a suddenly put load uses.
   */
  readonly kind: 'exact' | 'at-least' | 'at-most';
  /** m, > 0. */
  readonly height: number;
  /** ln(height / 1 m). */
  readonly logHeight: number;
  /** Standard uncertainty of logHeight, 1. */
  readonly logSd: number;
  /** What ring, gauge and mass each contribute to it, 1; logSd is the root of the sum of their squares. */
  readonly logSdParts: LogSdParts;
  /** Lower end of the 90 % interval, m; 0 for at-most. */
  readonly lower: number;
  /** Upper end of the 90 % interval, m; null (no bound) for at-least. */
  readonly upper: number | null;
  /** Landings computed. */
  readonly landings: number;
}

export interface UnsolvedHitHeight {
  readonly status: 'not-solved';
  readonly message: string;
  readonly landings: number;
}

export type HitHeight = SolvedHitHeight | UnsolvedHitHeight;

/**
 * Readings that leave no more than this many reading errors of travel count as 'at least': with 2.5 mm left read to
 * ± 2 mm (1.25) the fork bottomed or not with near-even odds, so the height itself is no longer told; 1.5 keeps the
 * chance that a reading called exact was a bottom-out below 7 % (normal error).
 */
export const FULL_TRAVEL_MARGIN = 1.5;
/** A ring is never read closer than this, m; keeps an 'at most' height above 0. */
const SMALLEST_READING_SD = 1e-4;
/** Local error of a step: keeps a hit height within 1e-6 m, a thousandth of what a ring tells. */
const SEARCH_TOLERANCE = 1e-7;
/** Relative step of the central differences: truncation about 1e-6, far above the solver's noise. */
const DIFFERENCE_STEP = 1e-3;

/**
 * Hit height behind a ring reading, m, with its interval.
 *
 * h such that the landing from h uses the travel read; d ln h = (ds − ∂s/∂p·dp − ∂s/∂m·dm)/(h·∂s/∂h), errors independent;
 * docs/equations/frame.md#hit-height. Monotone, so unique. Linear propagation holds for logSd below about 0.3.
 * @throws SpringInputError for a reading outside the stroke or negative uncertainties.
 */
export function hitHeight(
  spring: AirSpring,
  end: SprungEnd,
  reading: RingReading,
  uncertainty: HitHeightUncertainty,
): HitHeight {
  const { travelUsed, readingSd } = reading;
  requireSprungEnd(end);
  requireNumber('travelUsed', travelUsed, 'm', { atLeast: 0, atMost: spring.stroke });
  requireNumber('readingSd', readingSd, 'm', { atLeast: 0, below: spring.stroke });
  requireNumber('gaugeSd', uncertainty.gaugeSd, 'Pa', { atLeast: 0 });
  requireNumber('massSd', uncertainty.massSd, 'kg', { atLeast: 0 });
  const search = new HeightSearch(spring, end, SEARCH_TOLERANCE);
  const suddenTravel = search.travel(0);
  const isBelow = travelUsed <= suddenTravel;
  const target = isBelow ? suddenTravel + Math.max(readingSd, SMALLEST_READING_SD) : travelUsed;
  if (!(suddenTravel < spring.stroke) || target > spring.stroke) {
    return unsolved('a load put on suddenly uses all the travel, so the reading tells nothing', 1);
  }
  const found = search.heightFor(target);
  const { landings } = found;
  if (found.status !== 'found') {
    return unsolved(`no height within range uses this travel (${found.status})`, landings);
  }
  const { height } = found;
  const logSdParts = logStandardUncertainties(spring, end, search, height, readingSd, uncertainty);
  const logSd = Math.hypot(logSdParts.reading, logSdParts.gauge, logSdParts.mass);
  const isTold = Math.min(...Object.values(logSdParts)) >= 0 && logSd < Infinity;
  if (!isTold) {
    return unsolved('travel does not grow with height here: the end is so damped that it creeps', landings);
  }
  const spread = Math.exp(NORMAL_95 * logSd);
  const isFull = spring.stroke - travelUsed <= FULL_TRAVEL_MARGIN * readingSd;
  const kind = isBelow ? 'at-most' : isFull ? 'at-least' : 'exact';
  return {
    status: 'solved',
    kind,
    height,
    logHeight: Math.log(height),
    logSd,
    logSdParts,
    lower: kind === 'at-most' ? 0 : height / spread,
    upper: kind === 'at-least' ? null : height * spread,
    landings,
  };
}

function unsolved(message: string, landings: number): UnsolvedHitHeight {
  return { status: 'not-solved', message, landings };
}

function logStandardUncertainties(
  spring: AirSpring,
  end: SprungEnd,
  search: HeightSearch,
  height: number,
  readingSd: number,
  { gaugeSd, massSd }: HitHeightUncertainty,
): LogSdParts {
  const byHeight = logDerivative((factor) => search.travel(height * factor));
  const byPressure = logDerivative((factor) => {
    const gaugePressure = gaugePascal(spring.fill.gaugePressure * factor);
    const changed = airSpring(spring.unit, { ...spring.fill, gaugePressure });
    return new HeightSearch(changed, end, SEARCH_TOLERANCE).travel(height);
  });
  const byMass = logDerivative((factor) => {
    const changed = { ...end, sprungMass: end.sprungMass * factor };
    return new HeightSearch(spring, changed, SEARCH_TOLERANCE).travel(height);
  });
  // With travel that does not grow with height these are infinite, negative or no number: told apart by the caller.
  return {
    reading: readingSd / byHeight,
    gauge: Math.abs(byPressure * gaugeSd) / (spring.fill.gaugePressure * byHeight),
    mass: Math.abs(byMass * massSd) / (end.sprungMass * byHeight),
  };
}

/** Derivative of f(x·factor) with respect to ln(factor) at factor 1, by central difference. */
function logDerivative(f: (factor: number) => number): number {
  return (f(1 + DIFFERENCE_STEP) - f(1 - DIFFERENCE_STEP)) / (2 * DIFFERENCE_STEP);
}
