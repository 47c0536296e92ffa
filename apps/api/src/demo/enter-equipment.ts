import { BikeInputDto } from '../modules/bikes/bikes.dto.js';
import type { BikesService } from '../modules/bikes/bikes.service.js';
import { SpringUnitInputDto } from '../modules/spring-units/spring-units.dto.js';
import type { SpringUnitsService } from '../modules/spring-units/spring-units.service.js';
import { TrackInputDto } from '../modules/tracks/tracks.dto.js';
import type { TracksService } from '../modules/tracks/tracks.service.js';
import { BIKES, type BikeKey } from './bikes.js';
import { checked } from './checked.js';
import type { DemoPeople } from './enter-people.js';
import { TRACKS, type TrackKey } from './tracks.js';
import { UNITS, type UnitKey } from './units.js';

/** Ids of what was entered. */
export interface DemoEquipment {
  readonly bikes: ReadonlyMap<BikeKey, string>;
  readonly tracks: ReadonlyMap<TrackKey, string>;
  readonly units: ReadonlyMap<UnitKey, string>;
}

interface Services {
  readonly units: SpringUnitsService;
  readonly bikes: BikesService;
  readonly tracks: TracksService;
}

/** The mechanic enters units, bikes and tracks. */
export async function enterEquipment(services: Services, people: DemoPeople): Promise<DemoEquipment> {
  const { mechanic, riders } = people;
  const units = await enterEach(UNITS, async ({ input }) =>
    services.units.create(mechanic, await checked(SpringUnitInputDto, input)),
  );
  const bikes = await enterEach(BIKES, async ({ input, rider, fork, shock }) => {
    const riderId = known(riders, rider).id;
    const [forkUnitId, shockUnitId] = [known(units, fork), known(units, shock)];
    const leverageTable = [...input.leverageTable];
    return services.bikes.create(
      mechanic,
      await checked(BikeInputDto, { ...input, leverageTable, riderId, forkUnitId, shockUnitId }),
    );
  });
  const tracks = await enterEach(TRACKS, async ({ input }) =>
    services.tracks.create(
      mechanic,
      await checked(TrackInputDto, { ...input, sections: [...input.sections] }),
    ),
  );
  return { bikes, tracks, units };
}

/** Enters one after another and remembers the ids. */
async function enterEach<Key extends string, Item>(
  items: Readonly<Record<Key, Item>>,
  enter: (item: Item) => Promise<{ id: string }>,
): Promise<Map<Key, string>> {
  const ids = new Map<Key, string>();
  for (const key of Object.keys(items) as Key[]) ids.set(key, (await enter(items[key])).id);
  return ids;
}

/** What was entered under a key. @throws Error for what the scenario uses before it is entered. */
export function known<Key extends string, Value>(entered: ReadonlyMap<Key, Value>, key: Key): Value {
  const value = entered.get(key);
  if (value === undefined) throw new Error(`The scenario uses ${key} before it is entered.`);
  return value;
}
