import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { NotFound } from '../../platform/errors/refusal.js';
import { requestOrigin } from '../../platform/http/request-origin.js';
import { hashToken, newToken } from '../../platform/security/tokens.js';
import { WrongCredentials } from './accounts.errors.js';
import type { SignInDto } from './sign-ins.dto.js';
import { SignInsQueries } from './sign-ins.queries.js';

/** However much it is used, a sign-in ends after so long. */
const SIGN_IN_DAYS = 30;
const DAY_MS = 86_400_000;

/** A sign-in that has just begun: the token goes into the cookie and nowhere else. */
export interface NewSignIn {
  token: string;
  expiresAt: Date;
}

@Injectable()
export class SignInsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: SignInsQueries,
  ) {}

  /**
   * @param provenHash of the password by which somebody signs in; null for who does by a link.
   * @throws WrongCredentials where the password has been changed since it was proven.
   */
  async begin(accountId: string, provenHash: string | null): Promise<NewSignIn> {
    const token = newToken();
    const expiresAt = new Date(Date.now() + SIGN_IN_DAYS * DAY_MS);
    const device = requestOrigin()?.device ?? 'other';
    await this.database.asAccount(accountId, async (transaction) => {
      if (provenHash !== null && !(await this.queries.holdPassword(transaction, provenHash)))
        throw new WrongCredentials();
      await this.queries.insert(transaction, {
        tokenHash: hashToken(token),
        id: newId(),
        accountId,
        device,
        expiresAt,
      });
    });
    return { token, expiresAt };
  }

  /** The account's own sign-ins; `token` tells which one asks. */
  async list(accountId: string, token: string | undefined): Promise<SignInDto[]> {
    const asking = token === undefined ? '' : hashToken(token);
    const signIns = await this.database.asAccount(accountId, (transaction) =>
      this.queries.list(transaction, accountId),
    );
    return signIns.map(({ id, device, createdAt, lastSeenAt, expiresAt, tokenHash }) => ({
      id,
      device,
      createdAt: createdAt.toISOString(),
      lastSeenAt: lastSeenAt.toISOString(),
      expiresAt: expiresAt.toISOString(),
      current: tokenHash === asking,
    }));
  }

  /** Ends the sign-in behind a cookie, if there is one. */
  async end(token: string | undefined): Promise<void> {
    if (token === undefined) return;
    await this.database.asStranger((statements) => this.queries.end(statements, hashToken(token)));
  }

  /** @throws NotFound when the account has no such sign-in. */
  async endOne(accountId: string, id: string): Promise<void> {
    const ended = await this.database.asAccount(accountId, (transaction) =>
      this.queries.delete(transaction, { accountId, id }),
    );
    if (ended === 0) throw new NotFound('sign-in', id);
  }

  async endAll(accountId: string): Promise<void> {
    await this.database.asAccount(accountId, (transaction) =>
      this.queries.delete(transaction, { accountId }),
    );
  }
}
