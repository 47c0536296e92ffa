import { AsyncLocalStorage } from 'node:async_hooks';
import { Injectable } from '@nestjs/common';
import type { DataSource, EntityManager } from 'typeorm';
import { NotFound } from '../errors/refusal.js';
import { requestOrigin } from '../http/request-origin.js';
import { withoutPlaces, type ComputingPlaces } from './computing-places.js';
import { inTransaction } from './in-transaction.js';
import { IdempotencyConflict } from './idempotency-conflict.js';
import { IdempotencyEntity } from './idempotency.entity.js';
import { tableShape, type TableShape } from './table-shape.js';
import type { TeamOwned } from './team-owned.entity.js';

/** An open transaction. Queries take it as a required argument, so none can run outside one by mistake. */
export type Transaction = EntityManager;

/** Who acts, on which team, under which idempotency key. */
export interface WriteScope {
  readonly teamId: string;
  readonly accountId: string;
  readonly idempotency?: { readonly key: string; readonly fingerprint: string } | undefined;
}

/** The only door to the database: every statement runs in a transaction that has named its team and its account. */
@Injectable()
export class TeamDatabase {
  /** The transaction that all others are part of, while `allOrNothing` runs. */
  private readonly whole = new AsyncLocalStorage<Transaction>();

  /** @param places for transactions that compute for long; what they leave over is everybody else's. */
  constructor(
    private readonly dataSource: DataSource,
    private readonly places: ComputingPlaces,
  ) {}

  /**
   * Runs `work` so that every transaction it opens is part of one: everything is stored, or nothing. The parts must
   * come one after another.
   */
  allOrNothing<T>(work: () => Promise<T>): Promise<T> {
    if (this.whole.getStore()) return work();
    return this.dataSource.transaction((transaction) =>
      this.whole.run(transaction, () => withoutPlaces(work)),
    );
  }

  /**
   * Runs `work` in one transaction that sees the rows of `scope.teamId` only. It may be begun twice, the first time
   * without effect: see `needPlaceToCompute`.
   */
  inTeam<T>(
    scope: { teamId: string; accountId: string },
    work: (transaction: Transaction) => Promise<T>,
  ): Promise<T> {
    const run = (todo: typeof work) => this.begin((transaction) => nameTeam(transaction, scope), todo);
    return this.places.run(
      () => run(work),
      () =>
        run(async (transaction) => {
          await requireMember(transaction, scope);
          return work(transaction);
        }),
    );
  }

  /** The same, and every statement sees the team as it was at the first: for what must be one picture. Reads only. */
  snapshotOfTeam<T>(
    scope: { teamId: string; accountId: string },
    work: (transaction: Transaction) => Promise<T>,
  ): Promise<T> {
    if (this.whole.getStore()) throw new Error('A snapshot would not see what is not stored yet.');
    return inTransaction(
      this.dataSource,
      (transaction) => nameTeam(transaction, scope),
      work,
      'REPEATABLE READ',
    );
  }

  /** Runs `work` in a transaction that sees no team, only what belongs to the account itself. */
  asAccount<T>(accountId: string, work: (transaction: Transaction) => Promise<T>): Promise<T> {
    return this.begin(
      (transaction) =>
        transaction.query(
          `select set_config('app.account_id', $1, true), set_config('app.request_id', $2, true)`,
          [accountId, requestOrigin()?.requestId ?? ''],
        ),
      work,
    );
  }

  /**
   * Asks before anybody is known: sign-in, and whether the database is there. Sees no team's and no person's rows;
   * each statement stands for itself, so that the guard of every request costs one round trip, not three.
   */
  asStranger<T>(work: (statements: Transaction) => Promise<T>): Promise<T> {
    return this.whole.getStore() ? this.begin(() => Promise.resolve(), work) : work(this.dataSource.manager);
  }

  /**
   * Runs a write once. With an idempotency key the answer is stored in the transaction of the write itself:
   * either both are there after a crash or neither, and a repeated request gets the first one's answer.
   * @throws IdempotencyConflict when the key was used for another request.
   */
  writeOnce<T extends object>(scope: WriteScope, work: (transaction: Transaction) => Promise<T>): Promise<T> {
    const { idempotency } = scope;
    if (!idempotency) return this.inTeam(scope, work);
    return this.inTeam(scope, async (transaction) => {
      const id = { teamId: scope.teamId, accountId: scope.accountId, key: idempotency.key };
      // A concurrent repeat waits here for the first one's end, then finds its row.
      const claimed = await transaction
        .createQueryBuilder()
        .insert()
        .into(IdempotencyEntity)
        .values({ ...id, fingerprint: idempotency.fingerprint })
        .orIgnore()
        .returning('key')
        .execute();
      if ((claimed.raw as unknown[]).length === 0) {
        const earlier = await transaction.findOneByOrFail(IdempotencyEntity, id);
        if (earlier.fingerprint !== idempotency.fingerprint) throw new IdempotencyConflict(idempotency.key);
        return earlier.answer as T;
      }
      const answer = await work(transaction);
      await transaction.update(IdempotencyEntity, id, { answer: answer as Record<string, unknown> });
      return answer;
    });
  }

  /** The shape of an entity's table. Known from the start: no statement is run. */
  shapeOf(entity: new () => TeamOwned): TableShape {
    return tableShape(this.dataSource, entity);
  }

  /** Runs `work` in a transaction of its own in which `name` has said whose rows it sees. */
  private begin<T>(
    name: (transaction: Transaction) => Promise<unknown>,
    work: (transaction: Transaction) => Promise<T>,
  ): Promise<T> {
    const whole = this.whole.getStore();
    if (!whole) return inTransaction(this.dataSource, name, work);
    // A savepoint. The part before it has left its team and account set, and this one must not see their rows.
    return whole.transaction(async (transaction) => {
      await transaction.query(
        `select set_config('app.team_id', '', true), set_config('app.account_id', '', true)`,
      );
      await name(transaction);
      return work(transaction);
    });
  }
}

/** @throws NotFound for who has left the team while their question waited. */
async function requireMember(
  transaction: Transaction,
  { teamId, accountId }: { teamId: string; accountId: string },
): Promise<void> {
  const rows: unknown[] = await transaction.query(
    'select from member where team_id = $1 and account_id = $2',
    [teamId, accountId],
  );
  if (rows.length === 0) throw new NotFound('team', teamId);
}

/** Names the team and the account, and the request for whoever reads the audit trail. */
async function nameTeam(
  transaction: Transaction,
  { teamId, accountId }: { teamId: string; accountId: string },
): Promise<void> {
  const { requestId = '', tokenId = null } = requestOrigin() ?? {};
  // One statement sets all; `true` makes them end with the transaction, so a pooled connection keeps nothing.
  // The first two are what row-level security goes by; all but the first are what the audit trail writes down.
  await transaction.query(
    `select set_config('app.team_id', $1, true), set_config('app.account_id', $2, true),
            set_config('app.request_id', $3, true), set_config('app.token_id', $4, true)`,
    [teamId, accountId, requestId, tokenId ?? ''],
  );
}
