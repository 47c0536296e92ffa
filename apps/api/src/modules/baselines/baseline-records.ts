import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService } from '../bikes/bikes.service.js';
import { Blinding } from '../blinding/blinding.js';
import { DemandService } from '../demand/demand.service.js';
import { RidersService } from '../riders/riders.service.js';
import { SetupsService } from '../setups/setups.service.js';
import { SpringUnitsService } from '../spring-units/spring-units.service.js';
import { TracksService } from '../tracks/tracks.service.js';
import type { BaselineRecords } from './compute-baseline.js';
import type { Venue } from './venue.js';

/** Where and in what a bike, or every bike, is to be ridden. */
export interface BaselinePlace {
  readonly trackId: string;
  readonly bikeId?: string | undefined;
  readonly venue: Venue;
}

/** Collects the records behind the baselines of a track. */
@Injectable()
export class BaselineRecordsReader {
  constructor(
    private readonly tracks: TracksService,
    private readonly bikes: BikesService,
    private readonly riders: RidersService,
    private readonly units: SpringUnitsService,
    private readonly setups: SetupsService,
    private readonly demand: DemandService,
    private readonly blinding: Blinding,
  ) {}

  /** One set of records for each bike that the member may see, or for the one that is asked for. */
  async onTrack(
    transaction: Transaction,
    scope: TeamScope,
    { trackId, bikeId, venue }: BaselinePlace,
  ): Promise<BaselineRecords[]> {
    const { teamId } = scope;
    const track = await this.tracks.require(transaction, teamId, trackId);
    const bikes = bikeId
      ? [await this.bikes.requireVisible(transaction, scope, bikeId)]
      : await this.bikes.allVisible(transaction, scope);
    if (bikeId) await this.blinding.refuseHidden(transaction, scope, bikeId);
    const hidden = await this.blinding.hiddenBikes(transaction, scope);
    const riders = byId(await this.riders.all(transaction, teamId));
    const units = byId(await this.units.all(transaction, teamId));
    const setups = await this.setups.latestOfAll(transaction, teamId);
    const evidenceVersion = await this.demand.evidenceVersion(transaction, teamId);
    return bikes.flatMap((bike) => {
      if (hidden.has(bike.id)) return [];
      const rider = riders.get(bike.riderId);
      const fork = units.get(bike.forkUnitId);
      const shock = bike.shockUnitId ? (units.get(bike.shockUnitId) ?? null) : null;
      const setup = setups.find((candidate) => candidate.bikeId === bike.id) ?? null;
      // The foreign keys forbid a bike without a rider or a fork.
      return rider && fork ? [{ track, venue, bike, rider, fork, shock, setup, evidenceVersion }] : [];
    });
  }
}

const byId = <Row extends { id: string }>(rows: readonly Row[]): Map<string, Row> =>
  new Map(rows.map((row) => [row.id, row]));
