import { millimetresFromMetres } from '@loamledger/units';
import type { Bike } from '../bikes/bikes.service.js';
import type { Rider } from '../riders/riders.service.js';
import { brakingFigures } from '../suspension/braking-figures.js';
import type { BikeBrakingDto } from './ends.dto.js';

/** What braking needs to know of a bike under its rider, with what of it is assumed. */
export function brakingOf(bike: Bike, rider: Rider): BikeBrakingDto {
  const figures = brakingFigures(bike, rider);
  const isShareAssumed = bike.frontLoadShare === null || bike.sources.frontLoadShare === 'assumed';
  const assumed: [keyof BikeBrakingDto, boolean][] = [
    ['totalMassKg', (bike.sources.mass ?? 'assumed') === 'assumed' || rider.readyMassSource === 'assumed'],
    ['centreOfMassHeightMm', bike.centreOfMassHeight === null],
    ['centreOfMassToRearMm', bike.centreOfMassToRear === null && isShareAssumed],
    ['frontUnsprungMassKg', (bike.sources.frontUnsprungMass ?? 'assumed') === 'assumed'],
  ];
  return {
    totalMassKg: figures.totalMass,
    wheelbaseMm: millimetresFromMetres(figures.wheelbase),
    centreOfMassHeightMm: millimetresFromMetres(figures.centreHeight),
    centreOfMassToRearMm: millimetresFromMetres(figures.centreToRear),
    frontUnsprungMassKg: figures.frontUnsprungMass,
    assumed: assumed.filter(([, isAssumed]) => isAssumed).map(([field]) => field),
  };
}
