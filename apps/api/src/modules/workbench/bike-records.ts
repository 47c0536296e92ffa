import { createHash } from 'node:crypto';
import { DEMAND_MODEL_VERSION } from '@loamledger/evidence';
import { ENGINE_VERSION } from '@loamledger/spring';
import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService, type Bike } from '../bikes/bikes.service.js';
import { Blinding } from '../blinding/blinding.js';
import { RidersService, type Rider } from '../riders/riders.service.js';
import { SetupsService, type Setup } from '../setups/setups.service.js';
import { SpacersService, type InStock } from '../spacers/spacers.service.js';
import { SpringUnitsService, type SpringUnit } from '../spring-units/spring-units.service.js';
import { TracksService, type Track } from '../tracks/tracks.service.js';

/** What is stored about a bike, its rider and the track that is asked about. */
export interface BikeRecords {
  readonly bike: Bike;
  readonly rider: Rider;
  readonly fork: SpringUnit;
  readonly shock: SpringUnit | null;
  /** null: the bike has no set-up yet. */
  readonly setup: Setup | null;
  readonly inStock: InStock;
  /** null: no track is meant. */
  readonly track: Track | null;
}

/** Changes when the way the ends are put together changes. */
const COMPOSITION_VERSION = 1;

/** Collects the records of one bike. */
@Injectable()
export class BikeRecordsReader {
  constructor(
    private readonly bikes: BikesService,
    private readonly riders: RidersService,
    private readonly units: SpringUnitsService,
    private readonly setups: SetupsService,
    private readonly tracks: TracksService,
    private readonly blinding: Blinding,
    private readonly spacers: SpacersService,
  ) {}

  /**
   * @throws NotFound for a bike that the member may not see, or a track that the team does not have;
   * HiddenUntilClosed for a bike in a blind plan that the member rides.
   */
  async read(
    transaction: Transaction,
    scope: TeamScope,
    bikeId: string,
    trackId: string | null,
  ): Promise<BikeRecords> {
    const bike = await this.bikes.requireVisible(transaction, scope, bikeId);
    await this.blinding.refuseHidden(transaction, scope, bikeId);
    return this.of(transaction, scope.teamId, bike, trackId);
  }

  /** The records of a bike that the member was found to see; a blind plan is no matter of this one. */
  async of(
    transaction: Transaction,
    teamId: string,
    bike: Bike,
    trackId: string | null,
  ): Promise<BikeRecords> {
    return {
      bike,
      rider: await this.riders.require(transaction, teamId, bike.riderId),
      fork: await this.units.require(transaction, teamId, bike.forkUnitId),
      shock: bike.shockUnitId ? await this.units.require(transaction, teamId, bike.shockUnitId) : null,
      inStock: await this.spacers.inStock(transaction, teamId),
      setup: await this.setups.latest(transaction, teamId, bike.id),
      track: trackId ? await this.tracks.require(transaction, teamId, trackId) : null,
    };
  }
}

/** Hash of everything an answer from these records depends on: equal versions, equal answers. */
export function versionOf(records: BikeRecords, evidenceVersion: number): string {
  const { bike, rider, fork, shock, setup, track } = records;
  const versioned = [bike, rider, fork, shock, track].map((row) => (row ? `${row.id}:${row.version}` : ''));
  const parts = [COMPOSITION_VERSION, ENGINE_VERSION, DEMAND_MODEL_VERSION, evidenceVersion, setup?.id];
  return createHash('sha256')
    .update([...parts, ...versioned].join('/'))
    .digest('hex')
    .slice(0, 32);
}
