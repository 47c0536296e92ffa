import { useQueries } from '@tanstack/react-query';
import { joined, type Readable } from '../joined.js';
import { bikesQuery, type Bike } from './bikes.js';
import { ridersQuery, type Rider } from './riders.js';
import { springUnitsQuery, type SpringUnit } from './spring-units.js';

/** The bikes of a team with the riders and units they refer to. */
export interface Fleet {
  readonly bikes: readonly Bike[];
  readonly riders: readonly Rider[];
  readonly units: readonly SpringUnit[];
  readonly riderName: (id: string) => string;
  readonly unitName: (id: string) => string;
}

/** Reads the three lists at once; the answer is there when all of them are. */
export function useFleet(teamId: string): Readable<Fleet> {
  return useQueries({
    queries: [bikesQuery(teamId), ridersQuery(teamId), springUnitsQuery(teamId)],
    combine: ([bikes, riders, units]) =>
      joined([bikes, riders, units], () => fleetOf(bikes.data ?? [], riders.data ?? [], units.data ?? [])),
  });
}

function fleetOf(bikes: readonly Bike[], riders: readonly Rider[], units: readonly SpringUnit[]): Fleet {
  const nameIn = (things: readonly { id: string; name: string }[]) => (id: string) =>
    things.find((thing) => thing.id === id)?.name ?? '';
  return { bikes, riders, units, riderName: nameIn(riders), unitName: nameIn(units) };
}
