import { Injectable } from '@nestjs/common';
import { IsNull, type FindOptionsWhere } from 'typeorm';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import { DecisionEntity } from './decision.entity.js';
import type { DecisionFilter } from './decisions.dto.js';

@Injectable()
export class DecisionsQueries extends TeamRows<DecisionEntity> {
  constructor() {
    super(DecisionEntity, 'decision');
  }

  /** The filter of decisions for this rider and track that this came of. */
  wanted({ riderId, trackId, outcome }: Omit<DecisionFilter, 'bikeId'>): FindOptionsWhere<DecisionEntity> {
    return {
      ...(riderId && { riderId }),
      ...(trackId && { trackId }),
      ...(outcome && { outcome: outcome === 'open' ? IsNull() : outcome }),
    };
  }

  /** Decisions without an outcome, of one bike or of all. */
  async open(transaction: Transaction, teamId: string, bikeId?: string): Promise<DecisionEntity[]> {
    const bike = bikeId ? { bikeId } : {};
    return transaction.find(DecisionEntity, {
      where: { teamId, ...bike, outcome: IsNull() },
      order: { id: 'DESC' },
    });
  }

  async trackOfSetup(transaction: Transaction, teamId: string, setupId: string): Promise<string | null> {
    const decision = await transaction.findOneBy(DecisionEntity, { teamId, toSetupId: setupId });
    return decision?.trackId ?? null;
  }

  /** Whether the plan tries set-ups of the bike. */
  async plansBike(
    transaction: Transaction,
    teamId: string,
    planId: string,
    bikeId: string,
  ): Promise<boolean> {
    const rows: unknown[] = await transaction.query(
      'select from test_plan_arm where team_id = $1 and plan_id = $2 and bike_id = $3 limit 1',
      [teamId, planId, bikeId],
    );
    return rows.length > 0;
  }
}
