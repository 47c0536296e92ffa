import { hitHeight, type SolvedHitHeight } from '@loamledger/spring';
import { gaugePascalFromPsi } from '@loamledger/units';
import { engineEnd, type EndInputs } from './end-inputs.js';
import { GAUGE_SD_PSI, RELATIVE_MASS_SD } from './uncertainties.js';

/** The hit height behind a ring reading, as it is stored. Heights in m. */
export interface RingHit {
  readonly hitKind: SolvedHitHeight['kind'];
  readonly hitHeight: number;
  readonly hitLower: number;
  readonly hitUpper: number | null;
  readonly logHeight: number;
  /** Of what differs from reading to reading: ring and gauge. What is wrong in every reading alike is not noise. */
  readonly logSd: number;
}

/**
 * The hit height behind a ring reading at one end. Its interval counts ring, gauge and mass; the standard
 * deviation handed to the demand model counts ring and gauge only, since a wrong mass shifts every reading of a
 * bike alike, and would be taken for scatter between runs that is not there.
 * Null where the reading tells nothing: a set-up so soft that standing on it uses all its travel.
 */
export function ringHit(inputs: EndInputs, travelUsed: number, readingSd: number): RingHit | null {
  const { spring, end } = engineEnd(inputs);
  const reading = { travelUsed, readingSd };
  const gaugeSd = gaugePascalFromPsi(GAUGE_SD_PSI);
  const hit = hitHeight(spring, end, reading, { gaugeSd, massSd: RELATIVE_MASS_SD * end.sprungMass });
  if (hit.status !== 'solved') return null;
  return {
    hitKind: hit.kind,
    hitHeight: hit.height,
    hitLower: hit.lower,
    hitUpper: hit.upper,
    logHeight: hit.logHeight,
    logSd: Math.hypot(hit.logSdParts.reading, hit.logSdParts.gauge),
  };
}
