import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import type { Condition } from './conditions.js';
import { SessionEntity } from './session.entity.js';

@Injectable()
export class SessionsQueries extends TeamRows<SessionEntity> {
  constructor() {
    super(SessionEntity, 'session');
  }

  /** All sessions of that day on that track under those conditions, oldest first. */
  async allOfDay(
    transaction: Transaction,
    teamId: string,
    key: { trackId: string; day: string; condition: Condition },
  ): Promise<SessionEntity[]> {
    return transaction.find(SessionEntity, { where: { teamId, ...key }, order: { id: 'ASC' } });
  }

  /** Makes others who would number runs in the session wait for the end of this transaction. */
  async lock(transaction: Transaction, teamId: string, id: string): Promise<void> {
    await transaction.query('select from session where team_id = $1 and id = $2 for no key update', [
      teamId,
      id,
    ]);
  }

  /** Makes others who would open a session on the track wait for the end of this transaction. */
  async lockTrack(transaction: Transaction, teamId: string, trackId: string): Promise<void> {
    await transaction.query('select from track where team_id = $1 and id = $2 for no key update', [
      teamId,
      trackId,
    ]);
  }
}
