import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import type { ActingTokensDto } from './passwords.dto.js';

interface NewPassword {
  readonly passwordHash: string;
  readonly keptTokenHash: string;
  /** Of the password as it was when somebody gave it. */
  readonly provenHash: string;
}

@Injectable()
export class PasswordsQueries {
  /**
   * Sets the password of the account that the transaction acts for, and ends its sign-ins but the one of the token; false
   * where it is no longer the one that was proven.
   */
  async setOwn(
    transaction: Transaction,
    { passwordHash, keptTokenHash, provenHash }: NewPassword,
  ): Promise<boolean> {
    const [row]: { set: boolean }[] = await transaction.query('select set_own_password($1, $2, $3) as set', [
      passwordHash,
      keptTokenHash,
      provenHash,
    ]);
    return row?.set === true;
  }

  /** How many API tokens act for the account of the transaction, by team. */
  async tokens(transaction: Transaction): Promise<ActingTokensDto[]> {
    return transaction.query('select team_id as "teamId", team_name as "teamName", tokens from own_tokens()');
  }

  /** Revokes them all. */
  async revokeTokens(transaction: Transaction): Promise<void> {
    await transaction.query('select revoke_own_tokens()');
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
