import { Injectable } from '@nestjs/common';
import { In, IsNull, type FindOptionsWhere } from 'typeorm';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import { DecisionEntity } from './decision.entity.js';

@Injectable()
export class DecisionsQueries extends TeamRows<DecisionEntity> {
  constructor() {
    super(DecisionEntity, 'decision');
  }

  /** The filter of decisions about one of these bikes. */
  ofBikes(bikeIds: readonly string[]): FindOptionsWhere<DecisionEntity> {
    return { bikeId: In([...bikeIds]) };
  }

  /** Decisions without an outcome, of one bike or of all. */
  async open(transaction: Transaction, teamId: string, bikeId?: string): Promise<DecisionEntity[]> {
    const bike = bikeId ? { bikeId } : {};
    return transaction.find(DecisionEntity, {
      where: { teamId, ...bike, outcome: IsNull() },
      order: { id: 'DESC' },
    });
  }
}
