import { pressureAtVenue, pumpTo, SpringInputError, type Ambient, type PumpTo } from '@loamledger/spring';
import { gaugePascal, psiFromGaugePascal } from '@loamledger/units';
import { filledAtOf, fillOf, unitIdAt } from '../setups/setup-fill.js';
import type { Setup } from '../setups/setups.service.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { ambientAt, endInputs, engineEnd, type End } from '../suspension/end-inputs.js';
import type { Bike } from '../bikes/bikes.service.js';
import type { Rider } from '../riders/riders.service.js';
import type { NoPumpTo, PitTodayDto } from './pit-end.dto.js';

const WHY_NOT: Record<Exclude<PumpTo['status'], 'found'>, NoPumpTo> = {
  'no-limits': 'no limits',
  'beyond-limits': 'beyond limits',
  'out-of-reach': 'out of reach',
};

/**
 * What the rider's phone shows of an end today, by the same rule of the library. Null where the set-up does not say
 * where it was filled: then it was pumped at the track, and nothing has to be corrected.
 */
export function todaysPressure(
  end: End,
  parts: { unit: SpringUnit; bike: Bike; rider: Rider; setup: Setup },
  here: Ambient,
): PitTodayDto | null {
  const { unit, setup } = parts;
  const filledAt = filledAtOf(setup);
  if (!filledAt) return null;
  const fill = fillOf(end, setup);
  const there = ambientAt(filledAt.altitude, { airTemperature: filledAt.temperature, stationPressure: null });
  const leftAlonePsi = psiFromGaugePascal(pressureAtVenue(gaugePascal(fill.pressure), there, here));
  const nothing = (whyNot: NoPumpTo) => ({ pumpToPsi: null, leftAlonePsi, whyNot });
  if (unitIdAt(end, setup) !== unit.id) return nothing('another unit');
  try {
    const filled = { ...parts, fill, filledAt: null, ambient: there };
    const { spring, end: sprung } = engineEnd(endInputs(end, filled));
    const answer = pumpTo(spring.unit, spring.fill, sprung, here, unit);
    return answer.status === 'found'
      ? { pumpToPsi: psiFromGaugePascal(answer.gaugePressure), leftAlonePsi, whyNot: null }
      : nothing(WHY_NOT[answer.status]);
  } catch (refusal) {
    if (refusal instanceof SpringInputError) return nothing('not computable');
    throw refusal;
  }
}
