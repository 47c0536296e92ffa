import { Injectable } from '@nestjs/common';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { hashPassword } from '../../platform/security/passwords.js';
import { hashToken } from '../../platform/security/tokens.js';
import { WrongCredentials } from './accounts.errors.js';
import { AccountsService, type SignIn } from './accounts.service.js';
import type { NewPasswordDto, PasswordChangeDto, TokensInForceDto } from './passwords.dto.js';
import { PasswordLinkGone, WrongPassword } from './passwords.errors.js';
import { PasswordsQueries } from './passwords.queries.js';

@Injectable()
export class PasswordsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: PasswordsQueries,
    private readonly accounts: AccountsService,
  ) {}

  /**
   * Changes the password and ends every other sign-in: who knew the old one is out, but for API tokens that stay.
   * @param asking the token of the sign-in that stays.
   * @throws WrongPassword; tries count as those of signing in do, or a stolen phone could guess here.
   */
  async change(
    accountId: string,
    { oldPassword, newPassword, revokesTokens }: PasswordChangeDto,
    address: string,
    asking: string | undefined,
  ): Promise<TokensInForceDto> {
    const { email } = await this.accounts.describe(accountId);
    const { passwordHash: provenHash } = await this.accounts
      .provenAccount({ email, password: oldPassword }, address)
      .catch((error: unknown) => {
        throw error instanceof WrongCredentials ? new WrongPassword() : error;
      });
    const passwordHash = await hashPassword(newPassword);
    const keptTokenHash = hashToken(asking ?? '');
    return this.database.asAccount(accountId, async (transaction) => {
      const isSet = await this.queries.setOwn(transaction, { passwordHash, keptTokenHash, provenHash });
      // Somebody else was faster.
      if (!isSet) throw new WrongPassword();
      if (revokesTokens) await this.queries.revokeTokens(transaction);
      return { inForce: await this.queries.tokens(transaction) };
    });
  }

  /** The API tokens that act for the account. */
  async tokens(accountId: string): Promise<TokensInForceDto> {
    const inForce = await this.database.asAccount(accountId, (transaction) =>
      this.queries.tokens(transaction),
    );
    return { inForce };
  }

  /** Sets the password of who has forgotten it, by a mechanic's link, ends all sign-ins and begins one. */
  async setByLink({ token, newPassword, revokesTokens }: NewPasswordDto): Promise<SignIn> {
    const tokenHash = hashToken(token);
    const isOpen = await this.database.asStranger((statements) =>
      this.queries.linkIsOpen(statements, tokenHash),
    );
    if (!isOpen) throw new PasswordLinkGone();
    const passwordHash = await hashPassword(newPassword);
    return this.database.allOrNothing(async () => {
      const accountId = await this.database.asStranger((statements) =>
        this.queries.useLink(statements, tokenHash, passwordHash),
      );
      if (accountId === null) throw new PasswordLinkGone();
      if (revokesTokens)
        await this.database.asAccount(accountId, (transaction) => this.queries.revokeTokens(transaction));
      return this.accounts.beginSignIn(accountId, null);
    });
  }
}
