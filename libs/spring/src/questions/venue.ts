import type { AbsolutePascal, GaugePascal } from '@loamledger/units';
import { absolutePascal } from '@loamledger/units';
import { requireSprungEnd, type SprungEnd } from '../frame/sprung-end.js';
import { pressureAtVenue, type Ambient } from '../gas/atmosphere.js';
import type { AirSpringUnit } from '../unit/air-spring-unit.js';
import { airSpring, type SpringFill } from '../unit/air-spring.js';
import { springForce } from '../unit/force.js';
import { pressureForForce, type PressureAnswer } from '../unit/pressure-for-force.js';
import { sag } from './sag.js';

/** What to pump to at a venue so that the spring is again what it was here. */
export interface VenuePressure {
  /** What the gauge shows there if nothing is done. */
  readonly untouched: GaugePascal;
  /** Pressure of the air in the lower legs there at full extension. */
  readonly lowerLegPressure: AbsolutePascal;
  /** Same settled force at the sag of here. */
  readonly matchedAtSag: PressureAnswer;
  /** Same settled force in the middle of the stroke. */
  readonly matchedAtMidStroke: PressureAnswer;
}

/**
 * Pressures (Pa gauge) at a venue: left alone, and matched at sag or at mid-stroke.
 *
 * docs/equations/ambient.md#venue. Bled lower legs take the venue's pressure; sealed ones keep their air,
 * p_c·T₂/T₁. No one pressure restores the whole curve, since ambient pressure acts on the shaft and the lower legs too.
 * @throws SpringInputError if the venue's air is out of range.
 */
export function venuePressure(
  unit: AirSpringUnit,
  fill: SpringFill,
  end: SprungEnd,
  venue: Ambient,
  lowerLegs: 'sealed' | 'bled',
): VenuePressure {
  requireSprungEnd(end);
  const here = airSpring(unit, fill);
  const sealedPressure = (here.lowerLeg.pressure * venue.temperature) / fill.temperature;
  const lowerLegPressure = lowerLegs === 'bled' ? venue.pressure : absolutePascal(sealedPressure);
  const there = {
    spacers: fill.spacers,
    ambientPressure: venue.pressure,
    temperature: venue.temperature,
    lowerLegPressure,
  };
  const match = (travel: number) => pressureForForce(unit, there, travel, springForce(here, travel));
  const settled = sag(here, end);
  const atRest: PressureAnswer = {
    status: 'out-of-reach',
    message: `there is no sag to match: ${settled.status}`,
  };
  return {
    untouched: pressureAtVenue(
      fill.gaugePressure,
      { pressure: fill.ambientPressure, temperature: fill.temperature },
      venue,
    ),
    lowerLegPressure,
    matchedAtSag: settled.status === 'settled' ? match(settled.travel) : atRest,
    matchedAtMidStroke: match(unit.stroke / 2),
  };
}
