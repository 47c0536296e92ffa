import {
  airSpring,
  bottomingHeight,
  sag,
  springForce,
  springStiffness,
  travelForHeight,
  type AirSpring,
  type SpringFill,
  type SprungEnd,
} from '@loamledger/spring';
import type { BaselineCandidate } from '@loamledger/evidence';
import { gaugePascal, gaugePascalFromPsi, psiFromGaugePascal, type GaugePascal } from '@loamledger/units';

/** Travel at which the early stroke is judged, of the stroke. Common practice, no source. */
const EARLY_TRAVEL_FRACTION = 0.2;
/** Set-ups whose sag is so far outside the wanted band are no alternatives to anything. */
const SAG_MARGIN = 0.04;
const PRESSURE_STEP_PSI = 1;
/** Heights beyond this the engine does not compute, m. */
const HIGHEST_DROP = 20;

/** The hits that candidates are tried on, m. */
export interface TrialHits {
  readonly median: number;
  readonly high: number;
}

/** A candidate with what a person wants to know of it beside the choice. */
export interface EngineCandidate extends BaselineCandidate {
  /** Stiffness at sag, N/m. */
  readonly sagStiffness: number;
}

/** One end of a bike, to be tried with any fill. */
export interface EndToFill {
  readonly spring: AirSpring;
  readonly end: SprungEnd;
}

/** What the engine says about one fill of an end. @throws SpringInputError for a fill that cannot be. */
export function candidate(
  { spring, end }: EndToFill,
  pressurePa: GaugePascal,
  spacers: number,
  hits: TrialHits,
): EngineCandidate {
  const filled = airSpring(spring.unit, { ...spring.fill, gaugePressure: pressurePa, spacers });
  const settled = sag(filled, end);
  const bottoming = bottomingHeight(filled, end);
  return {
    pressurePa,
    spacers,
    sagFraction: settled.fraction,
    bottomingLogHeight: logBottoming(bottoming),
    travelAtMedian: travelForHeight(filled, end, Math.min(hits.median, HIGHEST_DROP)).travel,
    travelAt95: travelForHeight(filled, end, Math.min(hits.high, HIGHEST_DROP)).travel,
    earlyForce: springForce(filled, EARLY_TRAVEL_FRACTION * filled.stroke),
    sagStiffness: springStiffness(filled, settled.travel),
  };
}

function logBottoming(result: ReturnType<typeof bottomingHeight>): number {
  if (result.status === 'found') return Math.log(result.height);
  // It bottoms under the load alone: every run does. Or nothing bottoms it.
  return result.status === 'below-sudden-load' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
}

/**
 * All fills within the limits, in steps of 1 psi, whose sag is in or near the wanted band. Where none is, the two
 * nearest pressures of every spacer count: somebody has to be told what comes nearest.
 */
export function candidatesWithin(
  endToFill: EndToFill,
  limits: { minPressurePa: GaugePascal; maxPressurePa: GaugePascal; maxSpacers: number },
  sagBand: { min: number; max: number },
  hits: TrialHits,
): EngineCandidate[] {
  const found: EngineCandidate[] = [];
  for (let spacers = 0; spacers <= limits.maxSpacers; spacers += 1) {
    for (const pressure of pressuresNearBand(endToFill, limits, sagBand, spacers)) {
      found.push(candidate(endToFill, pressure, spacers, hits));
    }
  }
  return found;
}

/** Whole-psi pressures whose sag is near the band: sag falls with pressure, so they are one interval. */
function pressuresNearBand(
  { spring, end }: EndToFill,
  limits: { minPressurePa: GaugePascal; maxPressurePa: GaugePascal },
  sagBand: { min: number; max: number },
  spacers: number,
): GaugePascal[] {
  const sagAt = (gaugePressure: GaugePascal): number => {
    const fill: SpringFill = { ...spring.fill, gaugePressure, spacers };
    return sag(airSpring(spring.unit, fill), end).fraction;
  };
  const least = Math.ceil(psiFromGaugePascal(limits.minPressurePa) - ROUNDING_PSI);
  const most = Math.floor(psiFromGaugePascal(limits.maxPressurePa) + ROUNDING_PSI);
  const pressures: GaugePascal[] = [];
  let nearest = gaugePascal(limits.minPressurePa);
  let nearestMiss = Number.POSITIVE_INFINITY;
  for (let psi = least; psi <= most; psi += PRESSURE_STEP_PSI) {
    const pressure = clamped(gaugePascalFromPsi(psi), limits);
    const fraction = sagAt(pressure);
    const miss = Math.max(sagBand.min - fraction, fraction - sagBand.max);
    if (miss <= SAG_MARGIN) pressures.push(pressure);
    if (miss < nearestMiss) [nearest, nearestMiss] = [pressure, miss];
  }
  return pressures.length > 0 ? pressures : [nearest];
}

/** A limit of 40 psi is stored in pascals: what is 40 psi but for the last digit is within it, psi. */
const ROUNDING_PSI = 1e-9;

const clamped = (
  pressure: GaugePascal,
  { minPressurePa, maxPressurePa }: { minPressurePa: GaugePascal; maxPressurePa: GaugePascal },
): GaugePascal => gaugePascal(Math.min(Math.max(pressure, minPressurePa), maxPressurePa));
