import { Inject, Injectable } from '@nestjs/common';
import { CONFIG } from '../../config/config.token.js';
import type { Config } from '../../config/config.js';
import { isUniqueViolation } from '../../platform/errors/database-errors.js';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { hashPassword, passwordMatches } from '../../platform/security/passwords.js';
import { Throttle } from '../../platform/security/throttle.js';
import { hashToken, newToken } from '../../platform/security/tokens.js';
import { MembersService } from '../teams/members.service.js';
import type { AccountDto, CredentialsDto, JoinDto, SignUpDto } from './accounts.dto.js';
import { EmailTaken, InvitationGone, SignUpClosed, WrongCredentials } from './accounts.errors.js';
import { AccountsQueries } from './accounts.queries.js';

const SIGN_IN_DAYS = 30;
const DAY_MS = 86_400_000;

/** A sign-in that has just begun: the token goes into the cookie and nowhere else. */
export interface SignIn {
  token: string;
  expiresAt: Date;
  account: AccountDto;
}

@Injectable()
export class AccountsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: AccountsQueries,
    private readonly members: MembersService,
    private readonly throttle: Throttle,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  async signUp(input: SignUpDto): Promise<SignIn> {
    if (!this.config.openSignUp) throw new SignUpClosed();
    return this.beginSignIn(await this.createAccount(input));
  }

  /** Signs in, with growing delays after failures from one address on one account. */
  async signIn(input: CredentialsDto, address: string): Promise<SignIn> {
    const key = `${address} ${input.email}`;
    this.throttle.check(key, Date.now());
    const candidate = await this.database.asStranger((transaction) =>
      this.queries.signInCandidate(transaction, input.email),
    );
    if (!(await passwordMatches(candidate?.passwordHash, input.password)) || !candidate) {
      this.throttle.failed(key, Date.now());
      throw new WrongCredentials();
    }
    this.throttle.succeeded(key);
    return this.beginSignIn(candidate.id);
  }

  /** Joins a team by a single-use link, with a new account or, given its password, an existing one. */
  async join(input: JoinDto, address: string): Promise<SignIn> {
    const invitation = await this.database.asStranger((transaction) =>
      this.queries.openInvitation(transaction, hashToken(input.token)),
    );
    if (!invitation) throw new InvitationGone();
    const existing = await this.database.asStranger((transaction) =>
      this.queries.signInCandidate(transaction, input.email),
    );
    const accountId = existing
      ? (await this.signIn(input, address)).account.id
      : await this.createAccount(input);
    const used = await this.members.useInvitation(invitation, accountId);
    if (!used) throw new InvitationGone();
    return this.beginSignIn(accountId);
  }

  async signOut(accountId: string, token: string): Promise<void> {
    await this.database.asAccount(accountId, (transaction) =>
      this.queries.deleteSignIn(transaction, hashToken(token)),
    );
  }

  async describe(accountId: string): Promise<AccountDto> {
    return this.database.asAccount(accountId, async (transaction) => {
      const { id, email, displayName } = await this.queries.requireAccount(transaction, accountId);
      return { id, email, displayName, memberships: await this.queries.memberships(transaction, accountId) };
    });
  }

  private async createAccount(input: SignUpDto): Promise<string> {
    const account = {
      id: newId(),
      email: input.email,
      displayName: input.displayName,
      passwordHash: await hashPassword(input.password),
    };
    try {
      await this.database.asAccount(account.id, (transaction) =>
        this.queries.insertAccount(transaction, account),
      );
    } catch (error) {
      if (isUniqueViolation(error)) throw new EmailTaken(input.email);
      throw error;
    }
    return account.id;
  }

  private async beginSignIn(accountId: string): Promise<SignIn> {
    const token = newToken();
    const expiresAt = new Date(Date.now() + SIGN_IN_DAYS * DAY_MS);
    await this.database.asAccount(accountId, (transaction) =>
      this.queries.insertSignIn(transaction, { tokenHash: hashToken(token), accountId, expiresAt }),
    );
    return { token, expiresAt, account: await this.describe(accountId) };
  }
}
