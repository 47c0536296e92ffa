import { Injectable } from '@nestjs/common';
import { namesOf } from '../../platform/database/names-of.js';
import { byId, known } from '../../platform/database/rows-by.js';
import type { Transaction } from '../../platform/database/team-database.js';
import { SetupsService } from '../setups/setups.service.js';
import { SpacersService } from '../spacers/spacers.service.js';
import { SpringUnitsService } from '../spring-units/spring-units.service.js';
import { UnitServiceService } from '../unit-service/unit-service.service.js';
import { workOrderAnswer } from './work-order-answer.js';
import type { WorkOrderEntity } from './work-order.entity.js';
import type { WorkOrderDto } from './work-orders.dto.js';
import { WorkOrdersQueries, WorkStepsQueries } from './work-orders.queries.js';

/** Tells of work orders, in as many statements for one as for a page. */
@Injectable()
export class WorkOrderReader {
  constructor(
    private readonly orders: WorkOrdersQueries,
    private readonly steps: WorkStepsQueries,
    private readonly setups: SetupsService,
    private readonly spacers: SpacersService,
    private readonly units: SpringUnitsService,
    private readonly services: UnitServiceService,
  ) {}

  /** @throws NotFound */
  async one(transaction: Transaction, teamId: string, id: string): Promise<WorkOrderDto> {
    const order = await this.orders.require(transaction, teamId, id);
    return known(await this.answers(transaction, teamId, [order]), id);
  }

  async answers(
    transaction: Transaction,
    teamId: string,
    orders: readonly WorkOrderEntity[],
  ): Promise<Map<string, WorkOrderDto>> {
    if (orders.length === 0) return new Map();
    const ids = orders.map(({ id }) => id);
    const steps = await this.steps.ofOrders(transaction, teamId, ids);
    const ends = orders.flatMap(({ fromSetupId, toSetupId }) => [
      toSetupId,
      ...(fromSetupId ? [fromSetupId] : []),
    ]);
    const setups = await this.setups.byIds(transaction, teamId, ends);
    const newest = await this.orders.newest(transaction, teamId, ends);
    const units = byId(await this.units.all(transaction, teamId));
    const inStock = await this.spacers.inStock(transaction, teamId);
    const torques = await this.services.capTorques(transaction, teamId);
    const people = [
      ...orders.map(({ madeBy }) => madeBy),
      ...steps.flatMap(({ doneBy }) => (doneBy ? [doneBy] : [])),
    ];
    const names = await namesOf(transaction, people);
    return new Map(
      orders.map((order) => [
        order.id,
        workOrderAnswer(order, {
          from: order.fromSetupId ? known(setups, order.fromSetupId) : null,
          to: known(setups, order.toSetupId),
          steps: steps.filter(({ workOrderId }) => workOrderId === order.id),
          isNewest: newest.has(order.toSetupId),
          unit: (id) => units.get(id),
          inStock,
          capTorque: (unitId) => torques.get(unitId) ?? null,
          nameOf: (accountId) => names.get(accountId) ?? '',
        }),
      ]),
    );
  }
}
