import { standardAtmosphere, type Ambient } from '@loamledger/spring';
import { fillOf, filledAtOf, unitIdAt } from '../setups/setup-fill.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import {
  endInputs,
  type End,
  type EndFill,
  type EndInputs,
  type FilledAt,
} from '../suspension/end-inputs.js';
import type { BikeRecords } from './bike-records.js';

const SEA_LEVEL = 0;

/** The unit at an end; null where the bike has none there. A rear without a leverage table cannot be computed. */
export function unitAt(end: End, { fork, shock, bike }: BikeRecords): SpringUnit | null {
  if (end === 'fork') return fork;
  return bike.leverageTable ? shock : null;
}

/** The air around, by the standard atmosphere: at the track, or at sea level without one. */
export const ambientOf = ({ track }: BikeRecords): Ambient =>
  standardAtmosphere(track?.altitude ?? SEA_LEVEL);

/** The engine's inputs of an end, filled with `fill`: there and then, or where it was pumped in. */
export function inputsWith(
  end: End,
  unit: SpringUnit,
  records: BikeRecords,
  fill: EndFill,
  filledAt: FilledAt | null = null,
): EndInputs {
  const { bike, rider } = records;
  return endInputs(end, { unit, bike, rider, fill, filledAt, ambient: ambientOf(records) });
}

/** The engine's inputs of an end as it stands; null where no set-up says what is in this unit. */
export function inputsAsSetUp(end: End, unit: SpringUnit, records: BikeRecords): EndInputs | null {
  const { bike, rider, setup } = records;
  // Another unit than the one in the set-up was mounted since: what the set-up says is not in it.
  const isInBike = setup !== null && unitIdAt(end, setup) === unit.id;
  if (!isInBike) return null;
  const fill = fillOf(end, setup);
  return endInputs(end, {
    unit,
    bike,
    rider,
    fill,
    filledAt: filledAtOf(setup),
    ambient: ambientOf(records),
  });
}
