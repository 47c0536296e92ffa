import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import type { Setup } from './setup-figures.js';
import { SetupsQueries } from './setups.queries.js';

/** Stored set-ups, for what set-ups themselves stand on. */
@Injectable()
export class StoredSetups {
  constructor(private readonly queries: SetupsQueries) {}

  byIds(transaction: Transaction, teamId: string, ids: readonly string[]): Promise<readonly Setup[]> {
    return this.queries.byIds(transaction, teamId, ids);
  }

  /** Makes others who would revise the bike's set-up wait for the end of this transaction. */
  lockBike(transaction: Transaction, teamId: string, bikeId: string): Promise<void> {
    return this.queries.lockBikes(transaction, teamId, [bikeId]);
  }
}
