import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';

@Injectable()
export class PasswordsQueries {
  /** Sets the password of the account that the transaction acts for, and ends its sign-ins but the one of the token. */
  async setOwn(transaction: Transaction, passwordHash: string, keptTokenHash: string): Promise<void> {
    await transaction.query('select set_own_password($1, $2)', [passwordHash, keptTokenHash]);
  }

  async linkIsOpen(statements: Transaction, tokenHash: string): Promise<boolean> {
    const [row]: { open: boolean }[] = await statements.query('select password_link_is_open($1) as open', [
      tokenHash,
    ]);
    return row?.open === true;
  }

  /** Whose password was set; null where the link is used up. */
  async useLink(statements: Transaction, tokenHash: string, passwordHash: string): Promise<string | null> {
    const [row]: { whose: string | null }[] = await statements.query(
      'select use_password_link($1, $2) as whose',
      [tokenHash, passwordHash],
    );
    return row?.whose ?? null;
  }
}
