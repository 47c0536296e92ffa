import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import { SetupEntity } from './setup.entity.js';

@Injectable()
export class SetupsQueries extends TeamRows<SetupEntity> {
  constructor() {
    super(SetupEntity, 'set-up');
  }

  async latest(transaction: Transaction, teamId: string, bikeId: string): Promise<SetupEntity | null> {
    return transaction.findOne(SetupEntity, { where: { teamId, bikeId }, order: { revision: 'DESC' } });
  }

  /** The newest set-up of every bike that has one. */
  async latestOfAll(transaction: Transaction, teamId: string): Promise<SetupEntity[]> {
    return transaction
      .createQueryBuilder(SetupEntity, 'setup')
      .distinctOn(['setup.bike_id'])
      .where('setup.team_id = :teamId', { teamId })
      .orderBy('setup.bike_id')
      .addOrderBy('setup.revision', 'DESC')
      .getMany();
  }

  /** The last two set-ups of every bike, newest first. */
  async lastTwoOfAll(transaction: Transaction, teamId: string): Promise<SetupEntity[]> {
    return transaction
      .createQueryBuilder(SetupEntity, 'setup')
      .where(
        `setup.team_id = :teamId and setup.id in (
           select last.id from bike cross join lateral (
             select id from setup one where one.team_id = bike.team_id and one.bike_id = bike.id
             order by one.revision desc limit 2) last
           where bike.team_id = :teamId)`,
        { teamId },
      )
      .orderBy('setup.revision', 'DESC')
      .getMany();
  }

  /**
   * Makes others who would revise the bikes' set-ups wait for the end of this transaction. All are locked in one order,
   * whoever asks: two who want the same bikes do not wait for each other.
   */
  async lockBikes(transaction: Transaction, teamId: string, bikeIds: readonly string[]): Promise<void> {
    await transaction.query(
      'select from bike where team_id = $1 and id = any ($2::uuid[]) order by id for no key update',
      [teamId, bikeIds],
    );
  }
}
