import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { SignInEntity } from './sign-in.entity.js';

@Injectable()
export class SignInsQueries {
  /** Whether the password is still the one that was proven; nobody changes it until the end of the transaction. */
  async holdPassword(transaction: Transaction, provenHash: string): Promise<boolean> {
    const [row]: { held: boolean }[] = await transaction.query('select hold_password($1) as held', [
      provenHash,
    ]);
    return row?.held === true;
  }

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
}
