import { Inject, Injectable } from '@nestjs/common';
import { CONFIG } from '../../config/config.token.js';
import type { Config } from '../../config/config.js';
import { isUniqueViolation } from '../../platform/errors/database-errors.js';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { StaleVersion } from '../../platform/http/preconditions.js';
import { hashPassword, passwordMatches } from '../../platform/security/passwords.js';
import { Throttle } from '../../platform/security/throttle.js';
import { hashToken } from '../../platform/security/tokens.js';
import { MembersService } from '../teams/members.service.js';
import type { AccountDto, CredentialsDto, JoinDto, SignInLinkTokenDto, SignUpDto } from './accounts.dto.js';
import {
  EmailTaken,
  InvitationGone,
  SignInLinkGone,
  SignUpClosed,
  WrongCredentials,
} from './accounts.errors.js';
import type { AccountEntity } from './account.entity.js';
import { AccountsQueries, type NewAccount } from './accounts.queries.js';
import { type NewSignIn, SignInsService } from './sign-ins.service.js';
import type { UnitsDto, UnitsInputDto } from './units.dto.js';

/** An account whose password somebody has given, and the hash of that password: it may be another by now. */
export type ProvenAccount = Pick<AccountEntity, 'id' | 'passwordHash'>;

/** A sign-in that has just begun, and whose it is. */
export interface SignIn extends NewSignIn {
  account: AccountDto;
}

@Injectable()
export class AccountsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: AccountsQueries,
    private readonly members: MembersService,
    private readonly signIns: SignInsService,
    private readonly throttle: Throttle,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  async signUp(input: SignUpDto, address: string): Promise<SignIn> {
    if (!this.config.openSignUp) throw new SignUpClosed();
    await this.throttle.trySignUp(address);
    const account = await newAccount(input);
    await this.insertAccount(account);
    return this.beginSignIn(account.id, account.passwordHash);
  }

  /** Signs in, with growing delays after failures from one address on one account. */
  async signIn(input: CredentialsDto, address: string): Promise<SignIn> {
    const { id, passwordHash } = await this.provenAccount(input, address);
    return this.beginSignIn(id, passwordHash);
  }

  /** The account that address and password are right for. @throws WrongCredentials, or TooManyTries after failures. */
  async provenAccount({ email, password }: CredentialsDto, address: string): Promise<ProvenAccount> {
    await this.throttle.trySignIn(address, email);
    const candidate = await this.database.asStranger((transaction) =>
      this.queries.signInCandidate(transaction, email),
    );
    if (!(await passwordMatches(candidate?.passwordHash, password)) || !candidate)
      throw new WrongCredentials();
    await this.throttle.forgiveSignIn(address, email);
    return candidate;
  }

  /**
   * Joins a team by a single-use link, with a new account or, given its password, an existing one. A new account is
   * made by whoever gets the link only: who comes too late by a moment must not be left with one that is in no team.
   */
  async join(input: JoinDto, address: string): Promise<SignIn> {
    const invitation = await this.database.asStranger((transaction) =>
      this.queries.openInvitation(transaction, hashToken(input.token)),
    );
    if (!invitation) throw new InvitationGone();
    const existing = await this.database.asStranger((transaction) =>
      this.queries.signInCandidate(transaction, input.email),
    );
    // Before the transaction: a wrong guess stays counted, and a password takes long to hash.
    const made = existing ? null : await newAccount(input);
    const account = made ?? (await this.provenAccount(input, address));
    return this.database.allOrNothing(async () => {
      if (made) await this.insertAccount(made);
      if (!(await this.members.useInvitation(invitation, account.id))) throw new InvitationGone();
      return this.beginSignIn(account.id, account.passwordHash);
    });
  }

  /** Signs a rider in by a single-use link from the pit. The link is used up by a sign-in that has begun only. */
  async signInByLink({ token }: SignInLinkTokenDto): Promise<SignIn> {
    return this.database.allOrNothing(async () => {
      const used = await this.database.asStranger((statements) =>
        this.queries.useSignInLink(statements, hashToken(token)),
      );
      if (!used) throw new SignInLinkGone();
      if (used.endsOthers) await this.signIns.endAll(used.accountId);
      return this.beginSignIn(used.accountId, null);
    });
  }

  async describe(accountId: string): Promise<AccountDto> {
    return this.database.asAccount(accountId, async (transaction) => {
      const account = await this.queries.requireAccount(transaction, accountId);
      return {
        id: account.id,
        email: account.email,
        displayName: account.displayName,
        memberships: await this.queries.memberships(transaction, accountId),
        units: unitsAnswer(account),
      };
    });
  }

  /** The units in which this person wants to read. */
  async chooseUnits(accountId: string, version: number, units: UnitsInputDto): Promise<UnitsDto> {
    return this.database.asAccount(accountId, async (transaction) => {
      const isChanged = await this.queries.changeUnits(transaction, accountId, version, units);
      if (!isChanged) throw new StaleVersion('choice of units');
      return unitsAnswer(await this.queries.requireAccount(transaction, accountId));
    });
  }

  private async insertAccount(account: NewAccount): Promise<void> {
    try {
      await this.database.asAccount(account.id, (transaction) =>
        this.queries.insertAccount(transaction, account),
      );
    } catch (error) {
      if (isUniqueViolation(error)) throw new EmailTaken(account.email);
      throw error;
    }
  }

  /** @throws WrongCredentials where the password has been changed since it was proven; null: by a link. */
  async beginSignIn(accountId: string, provenHash: string | null): Promise<SignIn> {
    return { ...(await this.signIns.begin(accountId, provenHash)), account: await this.describe(accountId) };
  }
}

const newAccount = async ({ email, displayName, password }: SignUpDto): Promise<NewAccount> => ({
  ...{ id: newId(), email, displayName },
  passwordHash: await hashPassword(password),
});

const unitsAnswer = ({
  pressureUnit,
  massUnit,
  temperatureUnit,
  version,
}: Omit<AccountEntity, 'passwordHash'>): UnitsDto => ({
  pressure: pressureUnit,
  mass: massUnit,
  temperature: temperatureUnit,
  version,
});
