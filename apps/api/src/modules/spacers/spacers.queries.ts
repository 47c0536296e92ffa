import { Injectable } from '@nestjs/common';
import { In } from 'typeorm';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import { SpacerMovementEntity } from './spacer-movement.entity.js';
import type { SpacerSize } from './spacer-size.js';

/** The newest movement of a size: what lies in stock now. */
export interface Stock extends SpacerSize {
  readonly number: number;
  readonly inStock: number;
}

@Injectable()
export class SpacersQueries extends TeamRows<SpacerMovementEntity> {
  constructor() {
    super(SpacerMovementEntity, 'movement of spacers');
  }

  /** Makes others who would move spacers of the team wait for the end of this transaction. */
  async lock(transaction: Transaction, teamId: string): Promise<void> {
    await transaction.query(`select pg_advisory_xact_lock(hashtextextended('spacers ' || $1, 0))`, [teamId]);
  }

  /** What lies in stock of every size of the team that was ever counted. */
  stocks(transaction: Transaction, teamId: string): Promise<Stock[]> {
    return transaction.query(
      `select distinct on (unit_kind, spacer_size) unit_kind as "unitKind", spacer_size as "spacerSize",
              number, in_stock as "inStock"
       from spacer_movement where team_id = $1
       order by unit_kind, spacer_size, number desc`,
      [teamId],
    );
  }

  /** The units of the team, with what is needed to know the size that goes into each. */
  units(
    transaction: Transaction,
    teamId: string,
  ): Promise<{ id: string; kind: 'fork' | 'shock'; spacerVolume: number }[]> {
    return transaction.query(
      `select id, kind, spacer_volume as "spacerVolume" from spring_unit where team_id = $1 order by id`,
      [teamId],
    );
  }

  /** Those of these movements that others reverse. */
  async reversed(transaction: Transaction, teamId: string, ids: readonly string[]): Promise<Set<string>> {
    if (ids.length === 0) return new Set();
    const rows = await this.all(transaction, teamId, { reversesId: In([...ids]) });
    return new Set(rows.map(({ reversesId }) => reversesId ?? ''));
  }
}
