import { Injectable } from '@nestjs/common';
import { byId } from '../../platform/database/rows-by.js';
import type { Transaction } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService, type Bike } from '../bikes/bikes.service.js';
import { Blinding } from '../blinding/blinding.js';
import { DecisionsService, type Decision } from '../decisions/decisions.service.js';
import { DemandService } from '../demand/demand.service.js';
import { RidersService, type Rider } from '../riders/riders.service.js';
import { StoredRuns } from '../runs/stored-runs.js';
import { SetupsService, type Setup } from '../setups/setups.service.js';
import { SpringUnitsService, type SpringUnit } from '../spring-units/spring-units.service.js';
import { PlanReader } from '../test-plans/plan-reader.js';
import { TracksService, type Track } from '../tracks/tracks.service.js';
import type { BaselineRecords, TeamRecords } from './compute-baseline.js';
import type { KeptRecords } from './kept-set-ups.js';
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
    private readonly decisions: DecisionsService,
    private readonly plans: PlanReader,
    private readonly runs: StoredRuns,
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
    const team = await this.ofTeam(transaction, teamId, trackId, { riders, units });
    const setups = await this.setups.latestOfAll(transaction, teamId);
    const evidenceVersion = await this.demand.evidenceVersion(transaction, teamId);
    return bikes.flatMap((bike) => {
      if (hidden.has(bike.id)) return [];
      const rider = riders.get(bike.riderId);
      const fork = units.get(bike.forkUnitId);
      const shock = bike.shockUnitId ? (units.get(bike.shockUnitId) ?? null) : null;
      const setup = setups.find((candidate) => candidate.bikeId === bike.id) ?? null;
      // The foreign keys forbid a bike without a rider or a fork.
      return rider && fork ? [{ track, venue, bike, rider, fork, shock, setup, evidenceVersion, team }] : [];
    });
  }

  /** What is the same for every bike of the team on this track. */
  private async ofTeam(
    transaction: Transaction,
    teamId: string,
    trackId: string,
    { riders, units }: Pick<RowsById, 'riders' | 'units'>,
  ): Promise<TeamRecords> {
    const decisions = await this.decisions.allKept(transaction, teamId);
    const bikes = byId(await this.bikes.all(transaction, teamId));
    const tracks = byId(await this.tracks.all(transaction, teamId));
    const setupIds = decisions.map(({ toSetupId }) => toSetupId);
    const setups = await this.setups.byIds(transaction, teamId, setupIds);
    const rows = { riders, units, bikes, tracks, setups };
    const plans = await this.plans.closedOn(transaction, teamId, trackId);
    return {
      kept: decisions.flatMap((decision) => keptRecords(decision, rows) ?? []),
      closedPlanIds: plans.map(({ row }) => row.id),
      newestRunId: plans.length === 0 ? null : await this.runs.newestId(transaction, teamId),
    };
  }
}

interface RowsById {
  readonly riders: ReadonlyMap<string, Rider>;
  readonly units: ReadonlyMap<string, SpringUnit>;
  readonly bikes: ReadonlyMap<string, Bike>;
  readonly tracks: ReadonlyMap<string, Track>;
  readonly setups: ReadonlyMap<string, Setup>;
}

/** The records behind a kept decision; the foreign keys forbid that one is missing. */
function keptRecords(decision: Decision, rows: RowsById): KeptRecords | null {
  const bike = rows.bikes.get(decision.bikeId);
  const setup = rows.setups.get(decision.toSetupId);
  const rider = bike && rows.riders.get(bike.riderId);
  if (!bike || !setup || !rider) return null;
  const unit = (id: string | null) => (id === null ? null : (rows.units.get(id) ?? null));
  return {
    decisionId: decision.id,
    bike,
    rider,
    setup,
    units: { fork: unit(setup.forkUnitId), shock: unit(setup.shockUnitId) },
    track: decision.trackId === null ? null : (rows.tracks.get(decision.trackId) ?? null),
  };
}
