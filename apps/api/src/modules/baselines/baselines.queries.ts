import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import { BaselineEntity } from './baseline.entity.js';

@Injectable()
export class BaselinesQueries extends TeamRows<BaselineEntity> {
  constructor() {
    super(BaselineEntity, 'baseline');
  }

  /** The newest baseline of every bike on a track. */
  async latest(transaction: Transaction, teamId: string, trackId: string): Promise<BaselineEntity[]> {
    return transaction
      .createQueryBuilder(BaselineEntity, 'baseline')
      .distinctOn(['baseline.bike_id'])
      .where('baseline.team_id = :teamId and baseline.track_id = :trackId', { teamId, trackId })
      .orderBy('baseline.bike_id')
      .addOrderBy('baseline.id', 'DESC')
      .getMany();
  }

  /** Lets one transaction at a time compute a track's baselines; others wait, then find them stored. */
  async lockTrack(transaction: Transaction, teamId: string, trackId: string): Promise<void> {
    await transaction.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [
      `baselines ${teamId} ${trackId}`,
    ]);
  }
}
