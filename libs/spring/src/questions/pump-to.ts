import type { GaugePascal } from '@loamledger/units';
import type { SprungEnd } from '../frame/sprung-end.js';
import type { Ambient } from '../gas/atmosphere.js';
import type { AirSpringUnit } from '../unit/air-spring-unit.js';
import type { SpringFill } from '../unit/air-spring.js';
import { venuePressure } from './venue.js';

/** What the unit's manual allows, as far as somebody has entered it; null: not entered. */
export interface EnteredLimits {
  /** Pa, gauge. */
  readonly minPressure: number | null;
  readonly maxPressure: number | null;
  readonly maxSpacers: number | null;
}

/** What to pump to at a venue, or why nothing is recommended. */
export type PumpTo =
  | { readonly status: 'found'; readonly gaugePressure: GaugePascal }
  | { readonly status: 'no-limits' }
  | { readonly status: 'beyond-limits'; readonly gaugePressure: GaugePascal }
  | { readonly status: 'out-of-reach'; readonly message: string };

/**
 * Gauge pressure (Pa) to pump to at a venue so that the end pushes back at sag as it did where it was filled, the lower
 * legs keeping the air they were closed with; docs/equations/ambient.md#venue.
 *
 * Nothing is recommended for a unit whose limits are not all entered, nor beyond them. This is the one rule behind the
 * rider's card and the pit: both must say the same.
 * @throws SpringInputError for a unit, a fill, an end or air that cannot be.
 */
export function pumpTo(
  unit: AirSpringUnit,
  fill: SpringFill,
  end: SprungEnd,
  venue: Ambient,
  { minPressure, maxPressure, maxSpacers }: EnteredLimits,
): PumpTo {
  if (minPressure === null || maxPressure === null || maxSpacers === null) return { status: 'no-limits' };
  const { matchedAtSag } = venuePressure(unit, fill, end, venue, 'sealed');
  if (matchedAtSag.status !== 'found') return { status: 'out-of-reach', message: matchedAtSag.message };
  const { gaugePressure } = matchedAtSag;
  const isAllowed = gaugePressure >= minPressure && gaugePressure <= maxPressure;
  return { status: isAllowed ? 'found' : 'beyond-limits', gaugePressure };
}
