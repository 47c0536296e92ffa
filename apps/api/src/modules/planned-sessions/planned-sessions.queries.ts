import { Injectable } from '@nestjs/common';
import { ArrayContains, Between, type FindOptionsWhere } from 'typeorm';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import { PlannedSessionEntity } from './planned-session.entity.js';

/** The days that a message may name. */
const [FIRST_DAY, LAST_DAY] = ['1990-01-01', '2199-12-31'];

export interface PlannedSessionFilter {
  readonly trackId?: string | undefined;
  readonly fromDay?: string | undefined;
  readonly toDay?: string | undefined;
  /** Only sessions of this rider. */
  readonly riderId: string | null;
}

@Injectable()
export class PlannedSessionsQueries extends TeamRows<PlannedSessionEntity> {
  constructor() {
    super(PlannedSessionEntity, 'planned session');
  }

  filterOf(filter: PlannedSessionFilter): FindOptionsWhere<PlannedSessionEntity> {
    const { trackId, fromDay, toDay, riderId } = filter;
    const isOpen = fromDay === undefined && toDay === undefined;
    return {
      ...(trackId !== undefined && { trackId }),
      ...(!isOpen && { day: Between(fromDay ?? FIRST_DAY, toDay ?? LAST_DAY) }),
      ...(riderId !== null && { riderIds: ArrayContains([riderId]) }),
    };
  }

  async remove(transaction: Transaction, teamId: string, id: string): Promise<void> {
    await transaction.delete(PlannedSessionEntity, { teamId, id });
  }
}
