import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { WorkOrdersQueries, type WaitingSpacers, type WaitingWork } from './work-orders.queries.js';

/** Work that waits, of the whole team at once. */
@Injectable()
export class WaitingWorkReader {
  constructor(private readonly orders: WorkOrdersQueries) {}

  orderedWork(transaction: Transaction, teamId: string): Promise<readonly WaitingWork[]> {
    return this.orders.waiting(transaction, teamId);
  }

  orderedSpacers(transaction: Transaction, teamId: string): Promise<readonly WaitingSpacers[]> {
    return this.orders.waitingSpacers(transaction, teamId);
  }
}

export type { WaitingWork } from './work-orders.queries.js';
