import { Injectable } from '@nestjs/common';
import { In } from 'typeorm';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import { WorkOrderEntity } from './work-order.entity.js';
import { WorkStepEntity } from './work-step.entity.js';

/** Work under way on a bike. */
export interface WaitingWork {
  readonly bikeId: string;
  readonly id: string;
  readonly done: number;
  readonly all: number;
}

/** Spacers that waiting work puts into a unit. */
export interface WaitingSpacers {
  readonly unitId: string;
  readonly spacers: number;
}

/** Orders for the newest set-up of their bike with a step to be done: `work`. */
const WAITING = `
  work as (
    select ordered.* from work_order ordered
    join setup on setup.team_id = ordered.team_id and setup.id = ordered.to_setup_id
    where ordered.team_id = $1
      and not exists (select from setup newer where newer.team_id = setup.team_id
                      and newer.bike_id = setup.bike_id and newer.revision > setup.revision)
      and exists (select from work_step step where step.team_id = ordered.team_id
                  and step.work_order_id = ordered.id and step.done_at is null)
  )`;

@Injectable()
export class WorkOrdersQueries extends TeamRows<WorkOrderEntity> {
  constructor() {
    super(WorkOrderEntity, 'work order');
  }

  /** The set-up that is in the bike before `revision`: that of its newest run or of its newest work done. */
  async inBikeBefore(
    transaction: Transaction,
    teamId: string,
    bikeId: string,
    revision: number,
  ): Promise<string | null> {
    const rows: { id: string }[] = await transaction.query(
      `select setup.id from setup
       where setup.team_id = $1 and setup.bike_id = $2 and setup.revision < $3
         and (exists (select from run where run.team_id = setup.team_id and run.setup_id = setup.id)
           or exists (select from work_order ordered where ordered.team_id = setup.team_id
                      and ordered.to_setup_id = setup.id
                      and not exists (select from work_step step where step.team_id = ordered.team_id
                                      and step.work_order_id = ordered.id and step.done_at is null)))
       order by setup.revision desc limit 1`,
      [teamId, bikeId, revision],
    );
    return rows[0]?.id ?? null;
  }

  async isRidden(transaction: Transaction, teamId: string, setupId: string): Promise<boolean> {
    const rows: unknown[] = await transaction.query(
      'select from run where team_id = $1 and setup_id = $2 limit 1',
      [teamId, setupId],
    );
    return rows.length > 0;
  }

  /** Those of these set-ups that are the newest of their bikes. */
  async newest(transaction: Transaction, teamId: string, setupIds: readonly string[]): Promise<Set<string>> {
    const rows: { id: string }[] = await transaction.query(
      `select setup.id from setup where setup.team_id = $1 and setup.id = any ($2::uuid[])
         and not exists (select from setup newer where newer.team_id = setup.team_id
                         and newer.bike_id = setup.bike_id and newer.revision > setup.revision)`,
      [teamId, setupIds],
    );
    return new Set(rows.map(({ id }) => id));
  }

  waiting(transaction: Transaction, teamId: string): Promise<WaitingWork[]> {
    return transaction.query(
      `with ${WAITING}
       select work.bike_id as "bikeId", work.id, count(step.done_at)::int as done, count(*)::int as "all"
       from work join work_step step on step.team_id = work.team_id and step.work_order_id = work.id
       group by work.bike_id, work.id order by work.id`,
      [teamId],
    );
  }

  /** Spacers that waiting work is still to put in, by unit. */
  waitingSpacers(transaction: Transaction, teamId: string): Promise<WaitingSpacers[]> {
    return transaction.query(
      `with ${WAITING}
       select case step."end" when 'fork' then after.fork_unit_id else after.shock_unit_id end as "unitId",
              (case step."end" when 'fork' then after.fork_spacers - before.fork_spacers
                               else after.shock_spacers - before.shock_spacers end)::int as spacers
       from work
       join work_step step on step.team_id = work.team_id and step.work_order_id = work.id
        and step.step = 'move-spacers' and step.done_at is null
       join setup after on after.team_id = work.team_id and after.id = work.to_setup_id
       join setup before on before.team_id = work.team_id and before.id = work.from_setup_id`,
      [teamId],
    );
  }
}

@Injectable()
export class WorkStepsQueries extends TeamRows<WorkStepEntity> {
  constructor() {
    super(WorkStepEntity, 'work step');
  }

  async ofOrders(
    transaction: Transaction,
    teamId: string,
    orderIds: readonly string[],
  ): Promise<WorkStepEntity[]> {
    if (orderIds.length === 0) return [];
    return transaction.find(WorkStepEntity, {
      where: { teamId, workOrderId: In([...orderIds]) },
      order: { position: 'ASC' },
    });
  }

  async insertMany(
    transaction: Transaction,
    steps: readonly Omit<WorkStepEntity, 'createdAt'>[],
  ): Promise<void> {
    await transaction.insert(WorkStepEntity, [...steps]);
  }

  /** Makes others who would tick the step wait for the end of this transaction. */
  async lock(transaction: Transaction, teamId: string, id: string): Promise<void> {
    await transaction.query('select from work_step where team_id = $1 and id = $2 for no key update', [
      teamId,
      id,
    ]);
  }

  async tick(
    transaction: Transaction,
    teamId: string,
    id: string,
    columns: Pick<WorkStepEntity, 'doneAt' | 'doneBy' | 'movementId'>,
  ): Promise<void> {
    await transaction.update(WorkStepEntity, { teamId, id }, columns);
  }
}
