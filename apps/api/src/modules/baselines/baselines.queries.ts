import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { newId } from '../../platform/database/new-id.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import { BaselineRunsEntity } from './baseline-runs.entity.js';
import { BaselineEntity } from './baseline.entity.js';
import type { Venue } from './venue.js';

@Injectable()
export class BaselinesQueries extends TeamRows<BaselineEntity> {
  constructor() {
    super(BaselineEntity, 'baseline');
  }

  /** The newest baseline of every bike on a track, for this ground and air. */
  async latest(
    transaction: Transaction,
    teamId: string,
    trackId: string,
    venue: Venue,
  ): Promise<BaselineEntity[]> {
    return transaction
      .createQueryBuilder(BaselineEntity, 'baseline')
      .distinctOn(['baseline.bike_id'])
      .where('baseline.team_id = :teamId and baseline.track_id = :trackId', { teamId, trackId })
      .andWhere('baseline.condition = :condition')
      .andWhere('baseline.air_temperature is not distinct from cast(:airTemperature as float8)')
      .andWhere('baseline.station_pressure is not distinct from cast(:stationPressure as float8)')
      .setParameters(venue)
      .orderBy('baseline.bike_id')
      .addOrderBy('baseline.id', 'DESC')
      .getMany();
  }

  /** Keeps the runs behind a version of the evidence; they are kept once. */
  async keepRuns(
    transaction: Transaction,
    teamId: string,
    evidenceVersion: number,
    runIds: readonly string[],
  ): Promise<void> {
    await transaction
      .createQueryBuilder()
      .insert()
      .into(BaselineRunsEntity)
      .values({ teamId, id: newId(), evidenceVersion, runIds: [...runIds] })
      .orIgnore()
      .execute();
  }

  /** The runs behind a version of the evidence; null where none were kept. */
  async keptRuns(
    transaction: Transaction,
    teamId: string,
    evidenceVersion: number,
  ): Promise<BaselineRunsEntity | null> {
    return transaction.findOneBy(BaselineRunsEntity, { teamId, evidenceVersion });
  }

  /** Lets one transaction at a time compute a track's baselines; others wait, then find them stored. */
  async lockTrack(transaction: Transaction, teamId: string, trackId: string): Promise<void> {
    await transaction.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [
      `baselines ${teamId} ${trackId}`,
    ]);
  }
}
