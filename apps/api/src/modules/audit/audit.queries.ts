import { Injectable } from '@nestjs/common';
import { TeamRows } from '../../platform/database/team-rows.js';
import type { Transaction } from '../../platform/database/team-database.js';
import { AuditEntryEntity } from './audit-entry.entity.js';

/** The records that have a name of their own. */
const NAMED = ['api_token', 'bike', 'rider', 'spring_unit', 'test_plan', 'track'];

@Injectable()
export class AuditQueries extends TeamRows<AuditEntryEntity> {
  constructor() {
    super(AuditEntryEntity, 'audit entry');
  }

  /** The names of the records, as they are now, by id; of those that have one. */
  async names(
    transaction: Transaction,
    teamId: string,
    ids: readonly string[],
  ): Promise<Map<string, string>> {
    const questions = NAMED.map(
      (table) => `select id, name from ${table} where team_id = $1 and id = any ($2)`,
    );
    const rows: { id: string; name: string }[] = await transaction.query(questions.join(' union all '), [
      teamId,
      ids,
    ]);
    return new Map(rows.map(({ id, name }) => [id, name]));
  }
}
