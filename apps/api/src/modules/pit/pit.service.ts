import { Injectable } from '@nestjs/common';
import { assumedTemperature } from '@loamledger/spring';
import { celsiusFromKelvin, kelvinFromCelsius } from '@loamledger/units';
import { byId, rowsBy } from '../../platform/database/rows-by.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService } from '../bikes/bikes.service.js';
import { RidersService } from '../riders/riders.service.js';
import { SetupsService } from '../setups/setups.service.js';
import { SpacersService } from '../spacers/spacers.service.js';
import { SpringUnitsService } from '../spring-units/spring-units.service.js';
import { ambientAt } from '../suspension/end-inputs.js';
import { TracksService, type Track } from '../tracks/tracks.service.js';
import { UnitServiceService } from '../unit-service/unit-service.service.js';
import { WaitingWorkReader } from '../work-orders/waiting-work.js';
import { pitBike } from './pit-bike.js';
import type { PitAirDto, PitDto, PitQuery } from './pit.dto.js';
import { PitQueries, type LastRun } from './pit.queries.js';

@Injectable()
export class PitService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: PitQueries,
    private readonly bikes: BikesService,
    private readonly riders: RidersService,
    private readonly units: SpringUnitsService,
    private readonly setups: SetupsService,
    private readonly tracks: TracksService,
    private readonly spacers: SpacersService,
    private readonly work: WaitingWorkReader,
    private readonly services: UnitServiceService,
  ) {}

  /**
   * The whole fleet, in as many statements for one bike as for a hundred.
   * @throws NotFound for a track that the team does not have.
   */
  async read(scope: TeamScope, query: PitQuery): Promise<PitDto> {
    const { teamId } = scope;
    const read = await this.database.inTeam(scope, async (transaction) => {
      const runs = await this.queries.lastRuns(transaction, teamId);
      return {
        runs,
        track: await this.trackOf(transaction, teamId, query.trackId, runs),
        bikes: await this.bikes.all(transaction, teamId),
        riders: await this.riders.all(transaction, teamId),
        units: await this.units.all(transaction, teamId),
        setups: await this.setups.lastTwoOfAll(transaction, teamId),
        decisions: await this.queries.lastDecisions(transaction, teamId),
        plans: await this.queries.openPlans(transaction, teamId),
        inStock: await this.spacers.inStock(transaction, teamId),
        services: await this.services.ofAll(transaction, teamId),
        work: await this.work.orderedWork(transaction, teamId),
        ordered: await this.work.orderedSpacers(transaction, teamId),
        planned: await this.queries.mostPlanned(transaction, teamId),
      };
    });
    const air = read.track && airOf(read.track, query.airTemperatureC);
    const fleet = {
      riders: byId(read.riders),
      units: byId(read.units),
      setups: grouped(read.setups, ({ bikeId }) => bikeId),
      decisions: rowsBy(read.decisions, ({ bikeId }) => bikeId),
      plans: grouped(read.plans, ({ bikeId }) => bikeId),
      runs: rowsBy(read.runs, ({ bikeId }) => bikeId),
      inStock: read.inStock,
      services: read.services,
      work: grouped(read.work, ({ bikeId }) => bikeId),
      orderedSpacers: new Map(read.ordered.map(({ unitId, spacers }) => [unitId, spacers])),
      wantedSpacers: new Map(read.planned.map(({ unitId, spacers }) => [unitId, spacers])),
      air:
        air &&
        ambientAt(air.altitudeM, {
          airTemperature: kelvinFromCelsius(air.airTemperatureC),
          stationPressure: null,
        }),
    };
    return { air, bikes: read.bikes.map((bike) => pitBike(bike, fleet)) };
  }

  /** The track that is meant: the one asked for, or that of the newest run. */
  private async trackOf(
    transaction: Transaction,
    teamId: string,
    trackId: string | undefined,
    [newest]: readonly LastRun[],
  ): Promise<Track | null> {
    const meant = trackId ?? newest?.trackId;
    return meant === undefined ? null : this.tracks.require(transaction, teamId, meant);
  }
}

const airOf = (track: Track, typedC: number | undefined): PitAirDto => ({
  trackId: track.id,
  trackName: track.name,
  altitudeM: track.altitude,
  airTemperatureC: typedC ?? celsiusFromKelvin(assumedTemperature(track.altitude)),
  isTemperatureAssumed: typedC === undefined,
});

function grouped<Row>(rows: readonly Row[], key: (row: Row) => string): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) groups.set(key(row), [...(groups.get(key(row)) ?? []), row]);
  return groups;
}
