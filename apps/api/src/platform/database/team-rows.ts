import type { DeepPartial, EntityTarget, FindOptionsWhere } from 'typeorm';
import { In, LessThan } from 'typeorm';
import { NotFound } from '../errors/refusal.js';
import { StaleVersion } from '../http/preconditions.js';
import { momentOfMaking } from './dated.js';
import { readRows, type RowQuestion } from './read-rows.js';
import type { TeamOwned } from './team-owned.entity.js';
import type { Transaction } from './team-database.js';

/** The statements that every table of a team needs. Features extend it with questions of their own. */
export abstract class TeamRows<Row extends TeamOwned> {
  protected constructor(
    private readonly entity: EntityTarget<Row>,
    /** The thing's name in sentences, e.g. `spring unit`. */
    private readonly thing: string,
  ) {}

  /** One page of rows, newest first, and one row more if there is a next page. */
  async page(
    transaction: Transaction,
    teamId: string,
    page: { cursor?: string; limit: number },
    filter: FindOptionsWhere<Row> = {},
  ): Promise<Row[]> {
    const start = page.cursor ? { id: LessThan(page.cursor) } : {};
    return readRows(transaction, this.entity, {
      where: { ...filter, ...start, teamId } as FindOptionsWhere<Row>,
      order: { id: 'DESC' } as RowQuestion<Row>['order'],
      take: page.limit + 1,
    });
  }

  async all(transaction: Transaction, teamId: string, filter: FindOptionsWhere<Row> = {}): Promise<Row[]> {
    return readRows(transaction, this.entity, {
      where: { ...filter, teamId } as FindOptionsWhere<Row>,
      order: { id: 'ASC' } as RowQuestion<Row>['order'],
    });
  }

  async byIds(transaction: Transaction, teamId: string, ids: readonly string[]): Promise<Row[]> {
    if (ids.length === 0) return [];
    return readRows(transaction, this.entity, {
      where: { teamId, id: In([...ids]) } as FindOptionsWhere<Row>,
    });
  }

  async find(transaction: Transaction, teamId: string, id: string): Promise<Row | null> {
    const rows = await readRows(transaction, this.entity, { where: { teamId, id } as FindOptionsWhere<Row> });
    return rows[0] ?? null;
  }

  /** @throws NotFound when the team has no such row. */
  async require(transaction: Transaction, teamId: string, id: string): Promise<Row> {
    const row = await this.find(transaction, teamId, id);
    if (!row) throw new NotFound(this.thing, id);
    return row;
  }

  /** Inserts the row and returns it as stored. */
  async insert(
    transaction: Transaction,
    row: DeepPartial<Row> & { teamId: string; id: string },
  ): Promise<Row> {
    const createdAt = momentOfMaking();
    await transaction.insert(this.entity, { ...(createdAt && { createdAt }), ...row } as never);
    return this.require(transaction, row.teamId, row.id);
  }

  /**
   * Changes the row if it still has `version`, and returns it.
   * @throws NotFound, or StaleVersion when somebody else was faster: nothing is overwritten.
   */
  async change(
    transaction: Transaction,
    teamId: string,
    id: string,
    version: number,
    changes: DeepPartial<Row>,
  ): Promise<Row> {
    const result = await transaction.update(
      this.entity,
      { teamId, id, version } as never,
      { ...changes, version: version + 1 } as never,
    );
    const row = await this.require(transaction, teamId, id);
    if (result.affected !== 1) throw new StaleVersion(this.thing);
    return row;
  }
}
