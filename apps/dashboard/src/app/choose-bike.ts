import type { Bike } from '../shared/http/reads/bikes.js';

/** The bike in the address if it is there, else the first of the rider's own. */
export function chooseBike(
  bikes: readonly Bike[],
  riderId: string | null,
  bikeId: string | undefined,
): Bike | undefined {
  return bikes.find(({ id }) => id === bikeId) ?? bikes.find((bike) => bike.riderId === riderId);
}
