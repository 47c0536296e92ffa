import { Injectable } from '@nestjs/common';
import { workSteps } from '@loamledger/spring';
import { newId } from '../../platform/database/new-id.js';
import { known } from '../../platform/database/rows-by.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { toPage, type Page } from '../../platform/http/page.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService } from '../bikes/bikes.service.js';
import { unitIdAt } from '../setups/setup-fill.js';
import { SetupsService, type Setup } from '../setups/setups.service.js';
import { ENDS } from '../suspension/end-inputs.js';
import { settingAt, settingBefore } from './work-order-answer.js';
import { WorkOrderReader } from './work-order-reader.js';
import type { WorkOrderDto, WorkOrderListQuery } from './work-orders.dto.js';
import { NoWork, OrderExists } from './work-orders.errors.js';
import { WorkOrdersQueries, WorkStepsQueries } from './work-orders.queries.js';

/** Work orders: from a change of set-up to steps that are ticked. */
@Injectable()
export class WorkOrdersService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly orders: WorkOrdersQueries,
    private readonly steps: WorkStepsQueries,
    private readonly bikes: BikesService,
    private readonly setups: SetupsService,
    private readonly reader: WorkOrderReader,
  ) {}

  async list(scope: TeamScope, { bikeId, ...page }: WorkOrderListQuery): Promise<Page<WorkOrderDto>> {
    const { teamId } = scope;
    return this.database.inTeam(scope, async (transaction) => {
      if (bikeId) await this.bikes.require(transaction, teamId, bikeId);
      const rows = await this.orders.page(transaction, teamId, page, bikeId ? { bikeId } : {});
      const answers = await this.reader.answers(transaction, teamId, rows);
      return toPage(rows, page.limit, (order) => known(answers, order.id));
    });
  }

  async get(scope: TeamScope, id: string): Promise<WorkOrderDto> {
    return this.database.inTeam(scope, (transaction) => this.reader.one(transaction, scope.teamId, id));
  }

  /**
   * The work from what is in the bike to what a set-up says: the set-up that was ridden or worked on last before it.
   * @throws NotFound, OrderExists, NoWork
   */
  async create(scope: TeamScope, setupId: string): Promise<WorkOrderDto> {
    const { teamId, accountId } = scope;
    return this.database.writeOnce(scope, async (transaction) => {
      const to = await this.setups.require(transaction, teamId, setupId);
      // Others who would make an order for the bike, or change its set-up, wait here.
      await this.setups.lockBikes(transaction, teamId, [to.bikeId]);
      const [existing] = await this.orders.all(transaction, teamId, { toSetupId: to.id });
      if (existing) throw new OrderExists();
      if (await this.orders.isRidden(transaction, teamId, to.id)) throw new NoWork();
      const from = await this.inBikeBefore(transaction, teamId, to);
      const planned = stepsBetween(from, to);
      if (planned.length === 0) throw new NoWork();
      const order = await this.orders.insert(transaction, {
        teamId,
        id: newId(),
        bikeId: to.bikeId,
        fromSetupId: from?.id ?? null,
        toSetupId: to.id,
        madeBy: accountId,
      });
      await this.steps.insertMany(
        transaction,
        planned.map((step, index) => ({
          ...step,
          teamId,
          id: newId(),
          workOrderId: order.id,
          position: index + 1,
          doneAt: null,
          doneBy: null,
          movementId: null,
        })),
      );
      return this.reader.one(transaction, teamId, order.id);
    });
  }

  private async inBikeBefore(transaction: Transaction, teamId: string, to: Setup): Promise<Setup | null> {
    const id = (await this.orders.inBikeBefore(transaction, teamId, to.bikeId, to.revision)) ?? to.previousId;
    return id === null ? null : this.setups.require(transaction, teamId, id);
  }
}

/** The steps at both ends, the fork's first. */
const stepsBetween = (from: Setup | null, to: Setup) =>
  ENDS.filter((end) => unitIdAt(end, to) !== null).flatMap((end) =>
    workSteps(settingBefore(end, from, to), settingAt(end, to)).map((step) => ({ end, step })),
  );
