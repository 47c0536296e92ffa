import type { BrakingCase } from '@loamledger/spring';
import type { Bike } from '../bikes/bikes.service.js';
import type { Rider } from '../riders/riders.service.js';
import { ASSUMED_FRONT_SHARE } from './end-inputs.js';

/** Height of the centre of mass of rider and bike where nobody has measured it, m. Common practice, no source. */
export const ASSUMED_CENTRE_HEIGHT = 1.05;

/** What braking needs to know of a bike under its rider, SI units. */
export type BrakingFigures = Pick<
  BrakingCase,
  'totalMass' | 'wheelbase' | 'centreHeight' | 'centreToRear' | 'frontUnsprungMass'
>;

export const brakingFigures = (bike: Bike, rider: Rider): BrakingFigures => ({
  totalMass: rider.readyMass + bike.mass,
  wheelbase: bike.wheelbase,
  centreHeight: bike.centreOfMassHeight ?? ASSUMED_CENTRE_HEIGHT,
  // On the level the load on the front wheel is the weight times b/L.
  centreToRear: bike.centreOfMassToRear ?? (bike.frontLoadShare ?? ASSUMED_FRONT_SHARE) * bike.wheelbase,
  frontUnsprungMass: bike.frontUnsprungMass,
});
