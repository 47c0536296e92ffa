import { Injectable } from '@nestjs/common';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { unitIdAt } from '../setups/setup-fill.js';
import { SetupsService } from '../setups/setups.service.js';
import { SpacersService } from '../spacers/spacers.service.js';
import { SpringUnitsService } from '../spring-units/spring-units.service.js';
import { spacersMoved } from './work-order-answer.js';
import { WorkOrderReader } from './work-order-reader.js';
import type { WorkOrderDto } from './work-orders.dto.js';
import { WorkOrdersQueries, WorkStepsQueries } from './work-orders.queries.js';
import type { WorkStepEntity } from './work-step.entity.js';

const NOTES = { done: 'By a work order.', undone: 'The step of the work order was not done after all.' };

/** Ticks steps of work orders; where spacers go in or come out, their stock moves with the tick. */
@Injectable()
export class TickStep {
  constructor(
    private readonly database: TeamDatabase,
    private readonly orders: WorkOrdersQueries,
    private readonly steps: WorkStepsQueries,
    private readonly setups: SetupsService,
    private readonly spacers: SpacersService,
    private readonly units: SpringUnitsService,
    private readonly reader: WorkOrderReader,
  ) {}

  /** Says that a step is done, or is not; saying it again changes nothing. @throws NotFound, StockShort */
  async tick(scope: TeamScope, id: string, isDone: boolean): Promise<WorkOrderDto> {
    const { teamId, accountId } = scope;
    return this.database.writeOnce(scope, async (transaction) => {
      await this.steps.lock(transaction, teamId, id);
      const step = await this.steps.require(transaction, teamId, id);
      if ((step.doneAt !== null) !== isDone) {
        const columns = isDone
          ? { doneAt: new Date(), doneBy: accountId, movementId: await this.move(transaction, scope, step) }
          : { doneAt: null, doneBy: null, movementId: await this.moveBack(transaction, scope, step) };
        await this.steps.tick(transaction, teamId, id, columns);
      }
      return this.reader.one(transaction, teamId, step.workOrderId);
    });
  }

  /** Takes from the stock what goes in, or puts there what comes out; null where no stock of the size is kept. */
  private async move(
    transaction: Transaction,
    scope: TeamScope,
    { step, end, workOrderId }: WorkStepEntity,
  ): Promise<string | null> {
    if (step !== 'move-spacers') return null;
    const order = await this.orders.require(transaction, scope.teamId, workOrderId);
    const to = await this.setups.require(transaction, scope.teamId, order.toSetupId);
    const from = order.fromSetupId
      ? await this.setups.require(transaction, scope.teamId, order.fromSetupId)
      : null;
    const unitId = unitIdAt(end, to);
    if (unitId === null) return null;
    const unit = await this.units.require(transaction, scope.teamId, unitId);
    const more = spacersMoved(end, from, to);
    return this.spacers.moveWithWork(transaction, scope, unit, more, NOTES.done);
  }

  private async moveBack(
    transaction: Transaction,
    scope: TeamScope,
    { movementId }: WorkStepEntity,
  ): Promise<null> {
    if (movementId !== null) await this.spacers.reverseWithWork(transaction, scope, movementId, NOTES.undone);
    return null;
  }
}
