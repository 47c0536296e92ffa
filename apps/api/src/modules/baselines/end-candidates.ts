import {
  airSpring,
  bottomingGrid,
  bottomingHeight,
  braking,
  REFERENCE_BRAKING,
  sag,
  springForce,
  springStiffness,
  travelForHeight,
  type AirSpring,
  type HeightResult,
  type SprungEnd,
} from '@loamledger/spring';
import type { Bike } from '../bikes/bikes.service.js';
import type { Rider } from '../riders/riders.service.js';
import { brakingFigures, type BrakingFigures } from '../suspension/braking-figures.js';
import { engineEnd, type End, type EndInputs } from '../suspension/end-inputs.js';
import type { BaselineCandidate } from '@loamledger/evidence';
import {
  gaugePascal,
  gaugePascalFromPsi,
  psiFromGaugePascal,
  radian,
  type GaugePascal,
} from '@loamledger/units';

/** Travel at which the early stroke is judged, of the stroke. Common practice, no source. */
const EARLY_TRAVEL_FRACTION = 0.2;
/** Set-ups whose sag is so far outside the wanted band are no alternatives to anything. */
const SAG_MARGIN = 0.04;
const PRESSURE_STEP_PSI = 1;
/** Heights beyond this the engine does not compute, m. */
export const HIGHEST_DROP = 20;

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
  /** Of a fork whose dive is asked for. */
  readonly bike?: BrakingFigures & { readonly headAngle: number };
}

/** One end of a bike under its rider, to be tried with any fill. @throws SpringInputError */
export const toFill = (end: End, inputs: EndInputs, bike: Bike, rider: Rider): EndToFill => ({
  ...engineEnd(inputs),
  ...(end === 'fork' ? { bike: { ...brakingFigures(bike, rider), headAngle: bike.headAngle } } : {}),
});

/** What the engine says about one fill of an end. @throws SpringInputError for a fill that cannot be. */
export function candidate(
  endToFill: EndToFill,
  pressurePa: GaugePascal,
  spacers: number,
  hits: TrialHits,
): EngineCandidate {
  const filled = refilled(endToFill.spring, pressurePa, spacers);
  return described(endToFill, filled, hits, bottomingHeight(filled, endToFill.end));
}

/**
 * All fills within the limits, in steps of 1 psi, whose sag is in or near the wanted band. Where none is, the
 * nearest pressure of every spacer count: somebody has to be told what comes nearest.
 */
export function candidatesWithin(
  endToFill: EndToFill,
  limits: { minPressurePa: GaugePascal; maxPressurePa: GaugePascal; maxSpacers: number },
  sagBand: { min: number; max: number },
  hits: TrialHits,
): EngineCandidate[] {
  const { spring, end } = endToFill;
  const counts = Array.from({ length: limits.maxSpacers + 1 }, (_, spacers) => spacers);
  return counts.flatMap((spacers) => {
    const pressures = pressuresNearBand(endToFill, limits, sagBand, spacers);
    return bottomingGrid(spring.unit, spring.fill, end, [spacers], pressures).map((cell) =>
      described(endToFill, refilled(spring, cell.gaugePressure, spacers), hits, cell.bottoming),
    );
  });
}

const refilled = (spring: AirSpring, gaugePressure: GaugePascal, spacers: number): AirSpring =>
  airSpring(spring.unit, { ...spring.fill, gaugePressure, spacers });

function described(
  { end, bike }: EndToFill,
  filled: AirSpring,
  hits: TrialHits,
  bottoming: HeightResult,
): EngineCandidate {
  const settled = sag(filled, end);
  const diveTravel = bike && travelUnderBraking(filled, bike);
  return {
    pressurePa: filled.fill.gaugePressure,
    spacers: filled.fill.spacers,
    sagFraction: settled.fraction,
    bottomingLogHeight: logBottoming(bottoming),
    travelAtMedian: travelForHeight(filled, end, Math.min(hits.median, HIGHEST_DROP)).travel,
    travelAt95: travelForHeight(filled, end, Math.min(hits.high, HIGHEST_DROP)).travel,
    earlyForce: springForce(filled, EARLY_TRAVEL_FRACTION * filled.stroke),
    sagStiffness: springStiffness(filled, settled.travel),
    ...(diveTravel === undefined ? {} : { diveTravel }),
  };
}

/** Travel used in the reference braking, m; undefined for a bike whose rear wheel would lift. */
export function travelUnderBraking(
  fork: AirSpring,
  bike: NonNullable<EndToFill['bike']>,
): number | undefined {
  const { headAngle, ...figures } = bike;
  // The head angle of a frame is given with the fork at full extension.
  const asBuilt = { headAngle: radian(headAngle), referenceTravel: 0 };
  const result = braking(fork, { ...figures, ...asBuilt, ...REFERENCE_BRAKING });
  return 'message' in result ? undefined : result.travel;
}

function logBottoming(result: HeightResult): number {
  if (result.status === 'found') return Math.log(result.height);
  // It bottoms under the load alone: every run does. Or nothing bottoms it. An answer that did not converge is
  // taken for the worse of the two: no set-up is recommended on it.
  return result.status === 'beyond-range' ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
}

/** Whole-psi pressures whose sag is near the band: sag falls with pressure, so they are one interval. */
function pressuresNearBand(
  { spring, end }: EndToFill,
  limits: { minPressurePa: GaugePascal; maxPressurePa: GaugePascal },
  sagBand: { min: number; max: number },
  spacers: number,
): GaugePascal[] {
  const sagAt = (pressure: GaugePascal): number => sag(refilled(spring, pressure, spacers), end).fraction;
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
