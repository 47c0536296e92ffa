import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import { touchEvidence } from '../../platform/database/evidence-version.js';
import type { Transaction } from '../../platform/database/team-database.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { BikesService, type Bike } from '../bikes/bikes.service.js';
import { RidersService } from '../riders/riders.service.js';
import { SessionsService, type Session } from '../sessions/sessions.service.js';
import { SetupsService, type Setup } from '../setups/setups.service.js';
import { SpringUnitsService } from '../spring-units/spring-units.service.js';
import { ENDS } from '../suspension/end-inputs.js';
import { TracksService } from '../tracks/tracks.service.js';
import { HitHeights, type RunRecords } from './hit-heights.js';
import { readingOf } from './reading-input.js';
import type { RingReadingEntity } from './ring-reading.entity.js';
import type { RunEntity } from './run.entity.js';
import type { RunInputDto } from './runs.dto.js';
import { NoSetupYet, NoShockToRead, NotOwnRun, SessionUnclear, SetupOfOtherBike } from './runs.errors.js';
import { RunsQueries } from './runs.queries.js';

type EndReadingRow = Omit<RingReadingEntity, 'teamId' | 'id' | 'createdAt' | 'runId'>;

/** Logs one run: the run, its ring readings and the hit heights behind them, all or nothing. */
@Injectable()
export class LogRun {
  constructor(
    private readonly queries: RunsQueries,
    private readonly hitHeights: HitHeights,
    private readonly sessions: SessionsService,
    private readonly tracks: TracksService,
    private readonly riders: RidersService,
    private readonly bikes: BikesService,
    private readonly setups: SetupsService,
    private readonly units: SpringUnitsService,
  ) {}

  /** Stores the run and returns it. @throws Refusal that names the field. */
  async log(transaction: Transaction, scope: TeamScope, input: RunInputDto): Promise<RunEntity> {
    const records = await this.recordsOf(transaction, scope, input);
    const readings = await this.readingsOf(transaction, scope.teamId, input, records);
    const { session, rider, bike, setup } = records;
    await this.sessions.lock(transaction, scope.teamId, session.id);
    const run = await this.queries.insert(transaction, {
      teamId: scope.teamId,
      id: newId(),
      sessionId: session.id,
      trackId: session.trackId,
      riderId: rider.id,
      bikeId: bike.id,
      setupId: setup.id,
      orderInSession: await this.queries.nextOrder(transaction, scope.teamId, session.id, rider.id),
      startedAt: input.startedAt ? new Date(input.startedAt) : null,
      time: input.timeS ?? null,
      forkBottomOuts: input.fork?.bottomOuts ?? null,
      shockBottomOuts: input.shock?.bottomOuts ?? null,
      supportRating: input.ratings?.support ?? null,
      comfortRating: input.ratings?.comfort ?? null,
      rideHeightRating: input.ratings?.rideHeight ?? null,
      fatigueRating: input.ratings?.fatigue ?? null,
      note: input.note ?? '',
      loggedBy: scope.accountId,
      ...voidColumns(input, scope.accountId),
    });
    await this.queries.insertReadings(
      transaction,
      readings.map((reading) => ({ teamId: scope.teamId, id: newId(), runId: run.id, ...reading })),
    );
    if (readings.length > 0) await touchEvidence(transaction, scope.teamId);
    return run;
  }

  private async recordsOf(
    transaction: Transaction,
    scope: TeamScope,
    input: RunInputDto,
  ): Promise<RunRecords> {
    const { teamId } = scope;
    const bike = await this.bikes.requireVisible(transaction, scope, input.bikeId);
    const riderId = input.riderId ?? bike.riderId;
    const own = visibleRider(scope);
    if (own && riderId !== own) throw new NotOwnRun();
    const session = await this.sessionOf(transaction, teamId, input);
    return {
      session,
      bike,
      track: await this.tracks.require(transaction, teamId, session.trackId),
      rider: await this.riders.require(transaction, teamId, riderId),
      setup: await this.setupOf(transaction, teamId, bike, input.setupId),
    };
  }

  private async sessionOf(transaction: Transaction, teamId: string, input: RunInputDto): Promise<Session> {
    if (input.sessionId) return this.sessions.require(transaction, teamId, input.sessionId);
    const { trackId, day, condition = 'dry', airTemperatureC = null } = input;
    if (!trackId || !day) throw new SessionUnclear();
    return this.sessions.ensure(transaction, teamId, { trackId, day, condition, airTemperatureC });
  }

  private async setupOf(
    transaction: Transaction,
    teamId: string,
    bike: Bike,
    setupId: string | undefined,
  ): Promise<Setup> {
    const setup = setupId
      ? await this.setups.require(transaction, teamId, setupId)
      : await this.setups.latest(transaction, teamId, bike.id);
    if (!setup) throw new NoSetupYet();
    if (setup.bikeId !== bike.id) throw new SetupOfOtherBike(setup.id);
    return setup;
  }

  private async readingsOf(
    transaction: Transaction,
    teamId: string,
    input: RunInputDto,
    records: RunRecords,
  ): Promise<EndReadingRow[]> {
    const rows: EndReadingRow[] = [];
    for (const end of ENDS) {
      const given = input[end];
      if (!given) continue;
      const unitId = end === 'fork' ? records.setup.forkUnitId : records.setup.shockUnitId;
      if (unitId === null) throw new NoShockToRead(given);
      const unit = await this.units.require(transaction, teamId, unitId);
      const reading = readingOf(end, given, unit.stroke);
      if (reading) rows.push({ end, ...reading, ...this.hitHeights.columns(end, reading, records, unit) });
    }
    return rows;
  }
}

function voidColumns(input: RunInputDto, accountId: string) {
  if (!input.spoilt) return {};
  return {
    voidedAt: new Date(),
    voidReason: input.spoilt.reason,
    voidedBy: accountId,
    readingsCount: input.spoilt.readingsCount ?? false,
  };
}
