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
import { AccountsQueries } from './accounts.queries.js';
import { type NewSignIn, SignInsService } from './sign-ins.service.js';
import type { UnitsDto, UnitsInputDto } from './units.dto.js';

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
    return this.beginSignIn(await this.createAccount(input));
  }

  /** Signs in, with growing delays after failures from one address on one account. */
  async signIn(input: CredentialsDto, address: string): Promise<SignIn> {
    return this.beginSignIn(await this.provenAccount(input, address));
  }

  /** The account that address and password are right for. @throws WrongCredentials, or TooManyTries after failures. */
  async provenAccount({ email, password }: CredentialsDto, address: string): Promise<string> {
    await this.throttle.trySignIn(address, email);
    const candidate = await this.database.asStranger((transaction) =>
      this.queries.signInCandidate(transaction, email),
    );
    if (!(await passwordMatches(candidate?.passwordHash, password)) || !candidate)
      throw new WrongCredentials();
    await this.throttle.forgiveSignIn(address, email);
    return candidate.id;
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
    const accountId = existing ? await this.provenAccount(input, address) : await this.createAccount(input);
    const used = await this.members.useInvitation(invitation, accountId);
    if (!used) throw new InvitationGone();
    return this.beginSignIn(accountId);
  }

  /** Signs a rider in by a single-use link from the pit. */
  async signInByLink({ token }: SignInLinkTokenDto): Promise<SignIn> {
    const used = await this.database.asStranger((statements) =>
      this.queries.useSignInLink(statements, hashToken(token)),
    );
    if (!used) throw new SignInLinkGone();
    if (used.endsOthers) await this.signIns.endAll(used.accountId);
    return this.beginSignIn(used.accountId);
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

  async beginSignIn(accountId: string): Promise<SignIn> {
    return { ...(await this.signIns.begin(accountId)), account: await this.describe(accountId) };
  }
}

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
