import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { BikesService } from '../bikes/bikes.service.js';
import { HiddenUntilClosed } from './blinding.errors.js';
import { BlindingQueries } from './blinding.queries.js';

/**
 * What a rider may not see while a blind plan that they ride in is open: the set-ups of its bikes, and on which of
 * them its runs were. Mechanics and coaches see everything, also where they ride themselves.
 */
@Injectable()
export class Blinding {
  constructor(
    private readonly queries: BlindingQueries,
    private readonly bikes: BikesService,
  ) {}

  /** Bikes whose set-ups the member may not see now. */
  async hiddenBikes(transaction: Transaction, scope: TeamScope): Promise<ReadonlySet<string>> {
    const own = visibleRider(scope);
    return own ? this.queries.bikes(transaction, scope.teamId, own) : new Set();
  }

  /** Runs of which the member may not see now what was ridden. */
  async hiddenRuns(transaction: Transaction, scope: TeamScope): Promise<ReadonlySet<string>> {
    const own = visibleRider(scope);
    return own ? this.queries.runs(transaction, scope.teamId, own) : new Set();
  }

  /** @throws HiddenUntilClosed where the member may not see the bike's set-ups now. */
  async refuseHidden(transaction: Transaction, scope: TeamScope, bikeId: string): Promise<void> {
    if ((await this.hiddenBikes(transaction, scope)).has(bikeId)) throw new HiddenUntilClosed();
  }

  /**
   * The filter of what belongs to set-ups: of one bike, or of all whose set-ups the member may see now.
   * @throws NotFound, HiddenUntilClosed
   */
  async visibleFilter(transaction: Transaction, scope: TeamScope, bikeId: string | undefined) {
    if (!bikeId) {
      return this.bikes.visibleFilter(transaction, scope, await this.hiddenBikes(transaction, scope));
    }
    await this.bikes.requireVisible(transaction, scope, bikeId);
    await this.refuseHidden(transaction, scope, bikeId);
    return { bikeId };
  }
}
