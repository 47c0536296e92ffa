import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService, type Bike } from '../bikes/bikes.service.js';
import { RidersService, type Rider } from '../riders/riders.service.js';
import { SessionsService, type Session } from '../sessions/sessions.service.js';
import { SetupsService, type Setup } from '../setups/setups.service.js';
import { SpringUnitsService, type SpringUnit } from '../spring-units/spring-units.service.js';
import type { End } from '../suspension/end-inputs.js';
import { TracksService, type Track } from '../tracks/tracks.service.js';

/** The records behind a run's hit heights. */
export interface RunRecords {
  readonly session: Session;
  readonly track: Track;
  readonly rider: Rider;
  readonly bike: Bike;
  readonly setup: Setup;
  /** The units that the set-up was made for. */
  readonly units: Readonly<Record<End, SpringUnit | null>>;
}

/** What a run says about where its records are. */
export interface RunKeys {
  readonly sessionId: string;
  readonly riderId: string;
  readonly bikeId: string;
  readonly setupId: string;
}

/** Reads the records that runs refer to. */
@Injectable()
export class RunRecordsReader {
  constructor(
    private readonly sessions: SessionsService,
    private readonly tracks: TracksService,
    private readonly riders: RidersService,
    private readonly bikes: BikesService,
    private readonly setups: SetupsService,
    private readonly units: SpringUnitsService,
  ) {}

  /** The bike, if the member may see it. */
  visibleBike(transaction: Transaction, scope: TeamScope, bikeId: string): Promise<Bike> {
    return this.bikes.requireVisible(transaction, scope, bikeId);
  }

  /** The set-up, if the member may see it. */
  visibleSetup(transaction: Transaction, scope: TeamScope, setupId: string): Promise<Setup> {
    return this.setups.requireVisible(transaction, scope, setupId);
  }

  latestSetup(transaction: Transaction, teamId: string, bikeId: string): Promise<Setup | null> {
    return this.setups.latest(transaction, teamId, bikeId);
  }

  /** All set-ups of the bike, oldest first. */
  setupsOf(transaction: Transaction, teamId: string, bikeId: string): Promise<readonly Setup[]> {
    return this.setups.ofBike(transaction, teamId, bikeId);
  }

  /** Reads the records of many runs in one transaction: each record is asked for once. */
  within(transaction: Transaction, teamId: string): (keys: RunKeys) => Promise<RunRecords> {
    const session = once((id) => this.sessions.require(transaction, teamId, id));
    const track = once((id) => this.tracks.require(transaction, teamId, id));
    const rider = once((id) => this.riders.require(transaction, teamId, id));
    const bike = once((id) => this.bikes.require(transaction, teamId, id));
    const setup = once((id) => this.setups.require(transaction, teamId, id));
    const unit = once((id) => this.units.require(transaction, teamId, id));
    return async (keys) => {
      const found = { session: await session(keys.sessionId), setup: await setup(keys.setupId) };
      const { forkUnitId, shockUnitId } = found.setup;
      return {
        ...found,
        track: await track(found.session.trackId),
        rider: await rider(keys.riderId),
        bike: await bike(keys.bikeId),
        units: { fork: await unit(forkUnitId), shock: shockUnitId === null ? null : await unit(shockUnitId) },
      };
    };
  }
}

/** The set-up that was in the bike at that moment: the newest made before it, else its first; none without a set-up. */
export const setupAt = (oldestFirst: readonly Setup[], moment: Date): Setup | undefined =>
  oldestFirst.findLast(({ createdAt }) => createdAt <= moment) ?? oldestFirst[0];

/** Reads each row when it is first asked for, and not again. */
export function once<Row>(read: (id: string) => Promise<Row>): (id: string) => Promise<Row> {
  const known = new Map<string, Promise<Row>>();
  return (id) => {
    const row = known.get(id) ?? read(id);
    known.set(id, row);
    return row;
  };
}
