import { Injectable } from '@nestjs/common';
import type { DataSource, EntityManager } from 'typeorm';
import { IdempotencyConflict } from './idempotency-conflict.js';
import { IdempotencyEntity } from './idempotency.entity.js';

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
  constructor(private readonly dataSource: DataSource) {}

  /** Runs `work` in one transaction that sees the rows of `scope.teamId` only. */
  inTeam<T>(
    scope: { teamId: string; accountId: string },
    work: (transaction: Transaction) => Promise<T>,
  ): Promise<T> {
    return this.dataSource.transaction(async (transaction) => {
      // One statement sets both; `true` makes them end with the transaction, so a pooled connection keeps nothing.
      await transaction.query(
        `select set_config('app.team_id', $1, true), set_config('app.account_id', $2, true)`,
        [scope.teamId, scope.accountId],
      );
      return work(transaction);
    });
  }

  /** Runs `work` in a transaction that sees no team, only what belongs to the account itself. */
  asAccount<T>(accountId: string, work: (transaction: Transaction) => Promise<T>): Promise<T> {
    return this.dataSource.transaction(async (transaction) => {
      await transaction.query(`select set_config('app.account_id', $1, true)`, [accountId]);
      return work(transaction);
    });
  }

  /** Runs `work` before anybody is known: sign-up and sign-in. Sees no team's and no person's rows. */
  asStranger<T>(work: (transaction: Transaction) => Promise<T>): Promise<T> {
    return this.dataSource.transaction(work);
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
}
