import { millimetresFromMetres } from '@loamledger/units';
import type { Bike } from '../bikes/bikes.service.js';
import type { Rider } from '../riders/riders.service.js';
import { ASSUMED_FRONT_SHARE } from '../suspension/end-inputs.js';
import type { BikeBrakingDto } from './ends.dto.js';

/** Height of the centre of mass of rider and bike where nobody has measured it, m. Common practice, no source. */
const ASSUMED_CENTRE_HEIGHT = 1.05;

/** What braking needs to know of a bike under its rider, with what of it is assumed. */
export function brakingOf(bike: Bike, rider: Rider): BikeBrakingDto {
  // On the level the load on the front wheel is the weight times b/L.
  const centreToRear =
    bike.centreOfMassToRear ?? (bike.frontLoadShare ?? ASSUMED_FRONT_SHARE) * bike.wheelbase;
  const isShareAssumed = bike.frontLoadShare === null || bike.sources.frontLoadShare === 'assumed';
  const assumed: [keyof BikeBrakingDto, boolean][] = [
    ['totalMassKg', (bike.sources.mass ?? 'assumed') === 'assumed' || rider.readyMassSource === 'assumed'],
    ['centreOfMassHeightMm', bike.centreOfMassHeight === null],
    ['centreOfMassToRearMm', bike.centreOfMassToRear === null && isShareAssumed],
    ['frontUnsprungMassKg', (bike.sources.frontUnsprungMass ?? 'assumed') === 'assumed'],
  ];
  return {
    totalMassKg: rider.readyMass + bike.mass,
    wheelbaseMm: millimetresFromMetres(bike.wheelbase),
    centreOfMassHeightMm: millimetresFromMetres(bike.centreOfMassHeight ?? ASSUMED_CENTRE_HEIGHT),
    centreOfMassToRearMm: millimetresFromMetres(centreToRear),
    frontUnsprungMassKg: bike.frontUnsprungMass,
    assumed: assumed.filter(([, isAssumed]) => isAssumed).map(([field]) => field),
  };
}
