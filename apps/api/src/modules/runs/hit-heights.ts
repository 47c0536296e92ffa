import { ENGINE_VERSION } from '@loamledger/spring';
import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { BikesService, type Bike } from '../bikes/bikes.service.js';
import { RidersService, type Rider } from '../riders/riders.service.js';
import { SessionsService, type Session } from '../sessions/sessions.service.js';
import { SetupsService, type Setup } from '../setups/setups.service.js';
import { SpringUnitsService, type SpringUnit } from '../spring-units/spring-units.service.js';
import { ambientAt, endInputs, type End, type EndFill, type FilledAt } from '../suspension/end-inputs.js';
import { ringHit } from '../suspension/ring-hit.js';
import { TracksService, type Track } from '../tracks/tracks.service.js';
import type { RingReadingEntity } from './ring-reading.entity.js';
import { RunsQueries } from './runs.queries.js';

/** The records behind a run's hit heights. */
export interface RunRecords {
  readonly session: Session;
  readonly track: Track;
  readonly rider: Rider;
  readonly bike: Bike;
  readonly setup: Setup;
}

type HitColumns = Omit<
  RingReadingEntity,
  'teamId' | 'id' | 'createdAt' | 'runId' | 'end' | 'travelUsed' | 'readingSd'
>;

/** Finds the hit height behind each ring reading, and finds it again when a figure behind it has changed. */
@Injectable()
export class HitHeights {
  constructor(
    private readonly queries: RunsQueries,
    private readonly sessions: SessionsService,
    private readonly tracks: TracksService,
    private readonly riders: RidersService,
    private readonly bikes: BikesService,
    private readonly setups: SetupsService,
    private readonly units: SpringUnitsService,
  ) {}

  /** The hit behind a reading, as columns of its row. */
  columns(
    end: End,
    reading: { travelUsed: number; readingSd: number },
    records: RunRecords,
    unit: SpringUnit,
  ): HitColumns {
    const { setup, bike, rider, session, track } = records;
    const inputs = endInputs(end, {
      unit,
      bike,
      rider,
      fill: fillOf(end, setup),
      filledAt: filledAtOf(setup),
      ambient: ambientAt(track.altitude, session),
    });
    const hit = ringHit(inputs, reading.travelUsed, reading.readingSd);
    const versions = [unit.version, bike.version, rider.version, session.version, track.version];
    return {
      hitKind: hit?.hitKind ?? null,
      hitHeight: hit?.hitHeight ?? null,
      hitLower: hit?.hitLower ?? null,
      hitUpper: hit?.hitUpper ?? null,
      logHeight: hit?.logHeight ?? null,
      logSd: hit?.logSd ?? null,
      basis: [ENGINE_VERSION, ...versions].join('/'),
      inputs,
    };
  }

  /**
   * Brings every hit height of the team up to date with the engine and with the figures of units, bikes, riders,
   * sessions and tracks as they are now. Returns how many had to be found again.
   */
  async refresh(transaction: Transaction, teamId: string): Promise<number> {
    const stale = await this.queries.staleReadings(transaction, teamId, ENGINE_VERSION);
    for (const reading of stale) {
      const run = await this.queries.require(transaction, teamId, reading.runId);
      const records: RunRecords = {
        session: await this.sessions.require(transaction, teamId, run.sessionId),
        track: await this.tracks.require(transaction, teamId, run.trackId),
        rider: await this.riders.require(transaction, teamId, run.riderId),
        bike: await this.bikes.require(transaction, teamId, run.bikeId),
        setup: await this.setups.require(transaction, teamId, run.setupId),
      };
      const unitId = reading.end === 'fork' ? records.setup.forkUnitId : records.setup.shockUnitId;
      if (unitId === null) continue;
      const unit = await this.units.require(transaction, teamId, unitId);
      const columns = this.columns(reading.end, reading, records, unit);
      await this.queries.updateHit(transaction, teamId, reading.id, columns);
    }
    return stale.length;
  }
}

/** What the set-up fills one end with. */
export const fillOf = (end: End, setup: Setup): EndFill =>
  end === 'fork'
    ? { pressure: setup.forkPressure, spacers: setup.forkSpacers }
    : { pressure: setup.shockPressure ?? 0, spacers: setup.shockSpacers ?? 0 };

/** Where the set-up was pumped, if that was recorded. */
export const filledAtOf = (setup: Setup): FilledAt | null =>
  setup.filledAltitude === null || setup.filledTemperature === null
    ? null
    : { altitude: setup.filledAltitude, temperature: setup.filledTemperature };
