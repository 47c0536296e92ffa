import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { toPage, type Page } from '../../platform/http/page.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { movementAnswer, stockAnswers } from './spacer-answers.js';
import type { HandReason, MovementReason, SpacerMovementEntity } from './spacer-movement.entity.js';
import { sizeKey, sizeOf, sizeOfMl, type SpacerSize } from './spacer-size.js';
import type {
  SpacerMovementDto,
  SpacerMovementInputDto,
  SpacerMovementListQuery,
  SpacerStockListDto,
} from './spacers.dto.js';
import { AlreadyReversed, NothingMoved, StockShort } from './spacers.errors.js';
import { SpacersQueries, type Stock } from './spacers.queries.js';

/** By how much a hand moves the stock, of which `now` lie there. */
const CHANGE: Record<HandReason, (spacers: number, now: number) => number> = {
  counted: (spacers, now) => spacers - now,
  bought: (spacers) => spacers,
  'taken out': (spacers) => spacers,
  lost: (spacers) => -spacers,
  'put in': (spacers) => -spacers,
};

/** How many spacers lie in stock of the unit's size; none where they were never counted. */
export type InStock = (unit: { kind: 'fork' | 'shock'; spacerVolume: number }) => number;

/** A movement to be made. */
interface Movement {
  readonly reason: MovementReason;
  readonly change: (now: number) => number;
  readonly note: string;
  readonly reversesId?: string;
}

/** How many spacers of each size lie in stock. */
@Injectable()
export class SpacersService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: SpacersQueries,
  ) {}

  async list(scope: TeamScope): Promise<SpacerStockListDto> {
    return this.database.inTeam(scope, async (transaction) => ({
      items: stockAnswers(
        await this.queries.stocks(transaction, scope.teamId),
        await this.queries.units(transaction, scope.teamId),
      ),
    }));
  }

  async history(scope: TeamScope, query: SpacerMovementListQuery): Promise<Page<SpacerMovementDto>> {
    const { teamId } = scope;
    const { unitKind, spacerVolumeMl, ...page } = query;
    const filter = {
      ...(unitKind && { unitKind }),
      ...(spacerVolumeMl !== undefined && { spacerSize: sizeOfMl(spacerVolumeMl) }),
    };
    return this.database.inTeam(scope, async (transaction) => {
      const rows = await this.queries.page(transaction, teamId, page, filter);
      const ids = rows.map(({ id }) => id);
      const reversed = await this.queries.reversed(transaction, teamId, ids);
      return toPage(rows, page.limit, (row) => movementAnswer(row, reversed.has(row.id)));
    });
  }

  /** @throws NothingMoved, StockShort */
  async enter(scope: TeamScope, input: SpacerMovementInputDto): Promise<SpacerMovementDto> {
    const { unitKind, spacerVolumeMl, reason, spacers, note = '' } = input;
    if (spacers === 0 && reason !== 'counted') throw new NothingMoved(spacers);
    const size = { unitKind, spacerSize: sizeOfMl(spacerVolumeMl) };
    const change = (now: number) => CHANGE[reason](spacers, now);
    return this.database.writeOnce(scope, async (transaction) => {
      await this.queries.lock(transaction, scope.teamId);
      const last = await this.lastOf(transaction, scope.teamId, size);
      const moved = await this.move(transaction, scope, size, last, { reason, change, note });
      return movementAnswer(moved, false);
    });
  }

  /** Undoes a movement by another: both stay. @throws NotFound, AlreadyReversed, StockShort */
  async reverse(scope: TeamScope, id: string, note: string): Promise<SpacerMovementDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const wrong = await this.queries.require(transaction, scope.teamId, id);
      await this.queries.lock(transaction, scope.teamId);
      if (await this.isReversed(transaction, wrong)) throw new AlreadyReversed();
      return movementAnswer(await this.moveBack(transaction, scope, wrong, note), false);
    });
  }

  /**
   * Moves the stock with work at a unit: spacers that go in leave it. The id of the movement; null where nobody has
   * counted the size yet, so that no stock of it is kept. @throws StockShort
   */
  async moveWithWork(
    transaction: Transaction,
    scope: TeamScope,
    unit: { kind: 'fork' | 'shock'; spacerVolume: number },
    spacersIn: number,
    note: string,
  ): Promise<string | null> {
    const size = sizeOf(unit);
    await this.queries.lock(transaction, scope.teamId);
    const last = await this.lastOf(transaction, scope.teamId, size);
    if (!last) return null;
    const reason = spacersIn > 0 ? 'put in' : 'taken out';
    return (await this.move(transaction, scope, size, last, { reason, change: () => -spacersIn, note })).id;
  }

  /** Takes back what work has moved, if nobody has done so by hand. @throws StockShort */
  async reverseWithWork(transaction: Transaction, scope: TeamScope, id: string, note: string): Promise<void> {
    const moved = await this.queries.require(transaction, scope.teamId, id);
    await this.queries.lock(transaction, scope.teamId);
    if (!(await this.isReversed(transaction, moved))) await this.moveBack(transaction, scope, moved, note);
  }

  private async isReversed(
    transaction: Transaction,
    { teamId, id, reversesId }: SpacerMovementEntity,
  ): Promise<boolean> {
    return reversesId !== null || (await this.queries.reversed(transaction, teamId, [id])).size > 0;
  }

  private async moveBack(
    transaction: Transaction,
    scope: TeamScope,
    wrong: SpacerMovementEntity,
    note: string,
  ): Promise<SpacerMovementEntity> {
    const last = await this.lastOf(transaction, scope.teamId, wrong);
    const movement = { reason: 'reversed', change: () => -wrong.change, note, reversesId: wrong.id } as const;
    return this.move(transaction, scope, wrong, last, movement);
  }

  /** What lies in stock of a size; undefined where nobody has counted it yet. */
  private async lastOf(
    transaction: Transaction,
    teamId: string,
    size: SpacerSize,
  ): Promise<Stock | undefined> {
    const stocks = await this.queries.stocks(transaction, teamId);
    return stocks.find((stock) => sizeKey(stock) === sizeKey(size));
  }

  /**
   * Moves the stock of a size on from its `last`, which was read behind the team's lock: movements of a team come one
   * after another, so that none takes what another is about to take. @throws StockShort: nothing is moved then.
   */
  private async move(
    transaction: Transaction,
    { teamId, accountId }: Pick<TeamScope, 'teamId' | 'accountId'>,
    { unitKind, spacerSize }: SpacerSize,
    last: Stock | undefined,
    { reason, change, note, reversesId }: Movement,
  ): Promise<SpacerMovementEntity> {
    const now = last?.inStock ?? 0;
    const moved = change(now);
    if (now + moved < 0) throw new StockShort(-moved, now);
    return this.queries.insert(transaction, {
      teamId,
      id: newId(),
      unitKind,
      spacerSize,
      number: (last?.number ?? 0) + 1,
      change: moved,
      inStock: now + moved,
      reason,
      note,
      enteredBy: accountId,
      reversesId: reversesId ?? null,
    });
  }

  /** What lies in stock for any unit of the team. */
  async inStock(transaction: Transaction, teamId: string): Promise<InStock> {
    const stocks = await this.queries.stocks(transaction, teamId);
    const byKey = new Map(stocks.map((stock) => [sizeKey(stock), stock.inStock]));
    return (unit) => byKey.get(sizeKey(sizeOf(unit))) ?? 0;
  }
}
