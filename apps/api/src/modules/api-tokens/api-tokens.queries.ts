import { Injectable } from '@nestjs/common';
import { IsNull } from 'typeorm';
import { TeamRows } from '../../platform/database/team-rows.js';
import type { Transaction } from '../../platform/database/team-database.js';
import { ApiTokenEntity } from './api-token.entity.js';

@Injectable()
export class ApiTokensQueries extends TeamRows<ApiTokenEntity> {
  constructor() {
    super(ApiTokenEntity, 'token');
  }

  inForce(transaction: Transaction, teamId: string): Promise<ApiTokenEntity[]> {
    return this.all(transaction, teamId, { revokedAt: IsNull() });
  }

  /** Revokes the token; false if the team has no such token in force. */
  async revoke(transaction: Transaction, teamId: string, id: string): Promise<boolean> {
    const result = await transaction.update(
      ApiTokenEntity,
      { teamId, id, revokedAt: IsNull() },
      { revokedAt: () => 'now()' },
    );
    return result.affected === 1;
  }
}
