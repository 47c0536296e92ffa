import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import type { Role } from '../../platform/http/scope.js';
import { SignInEntity } from './sign-in.entity.js';

/** Who asks, and what they are in the team they ask about. */
export interface RequestScope {
  accountId: string;
  role: Role | null;
  riderId: string | null;
  /** Whether it is time to write down that the sign-in was used. */
  isStale: boolean;
}

@Injectable()
export class SignInsQueries {
  async insert(
    transaction: Transaction,
    signIn: Pick<SignInEntity, 'tokenHash' | 'id' | 'accountId' | 'device' | 'expiresAt'>,
  ): Promise<void> {
    await transaction.insert(SignInEntity, signIn);
  }

  /** The account's sign-ins, the one used last first. */
  async list(transaction: Transaction, accountId: string): Promise<SignInEntity[]> {
    return transaction.find(SignInEntity, {
      where: { accountId },
      order: { lastSeenAt: 'DESC', id: 'DESC' },
    });
  }

  /** Ends one of the account's sign-ins, or all; the number that ended. */
  async delete(transaction: Transaction, which: { accountId: string; id?: string }): Promise<number> {
    return (await transaction.delete(SignInEntity, which)).affected ?? 0;
  }

  /** Ends the sign-in of whoever holds the token. */
  async end(statements: Transaction, tokenHash: string): Promise<void> {
    await statements.query('select end_sign_in($1)', [tokenHash]);
  }

  /** Writes down that the sign-in was used just now. */
  async see(statements: Transaction, tokenHash: string): Promise<void> {
    await statements.query('select see_sign_in($1)', [tokenHash]);
  }

  /** Who a sign-in token belongs to, and what that person is in `teamId`. */
  async requestScope(
    statements: Transaction,
    tokenHash: string,
    teamId: string | null,
  ): Promise<RequestScope | undefined> {
    const rows: RequestScope[] = await statements.query(
      `select account_id as "accountId", role, rider_id as "riderId", is_stale as "isStale"
       from request_scope($1, $2)`,
      [tokenHash, teamId],
    );
    return rows[0];
  }
}
