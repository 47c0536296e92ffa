import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { NotFound } from '../../platform/errors/refusal.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { hashToken, newToken } from '../../platform/security/tokens.js';
import { MembersQueries, type NewSignInLink } from './members.queries.js';
import type { PasswordLinkDto, SignInLinkDto, SignInLinkInputDto } from './teams.dto.js';
import { InAnotherTeam, NotForOneself, OnlyForRiders } from './teams.errors.js';

const MINUTE_MS = 60_000;
/** It is used on the spot, in the pit. */
const SIGN_IN_LINK_MS = 30 * MINUTE_MS;
/** It may have to be sent. */
const PASSWORD_LINK_MS = 24 * 60 * MINUTE_MS;

/** Single-use links by which members of a team get in again. Behind the # a token is never sent to a server's log. */
@Injectable()
export class MemberLinksService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: MembersQueries,
  ) {}

  /**
   * Makes a link by which a rider signs in on another phone.
   * @throws OnlyForRiders for who may do more than ride, or is in another team: a mechanic must not get there by it.
   */
  async linkSignIn(scope: TeamScope, memberId: string, input: SignInLinkInputDto): Promise<SignInLinkDto> {
    const { teamId, accountId: createdBy } = scope;
    return this.database.inTeam(scope, async (transaction) => {
      const accountId = await this.accountOf(transaction, teamId, memberId);
      if (!(await this.queries.onlyRidesIn(transaction, accountId, teamId))) throw new OnlyForRiders();
      const { id, token, expiresAt } = await this.store(transaction, {
        ...{ teamId, accountId, createdBy, endsOthers: input.endsOthers, setsPassword: false },
        expiresAt: new Date(Date.now() + SIGN_IN_LINK_MS),
      });
      return { id, path: `/sign-in-link#${token}`, expiresAt };
    });
  }

  /**
   * Makes a link by which a member who has forgotten the password sets a new one.
   * @throws InAnotherTeam for who is in another team: a mechanic must not get there by it.
   * @throws NotForOneself: one's own password is changed by who knows it.
   */
  async linkPassword(scope: TeamScope, memberId: string): Promise<PasswordLinkDto> {
    const { teamId, accountId: createdBy } = scope;
    return this.database.inTeam(scope, async (transaction) => {
      const accountId = await this.accountOf(transaction, teamId, memberId);
      if (accountId === createdBy) throw new NotForOneself();
      if (!(await this.queries.onlyInTeam(transaction, accountId, teamId))) throw new InAnotherTeam();
      const { id, token, expiresAt } = await this.store(transaction, {
        ...{ teamId, accountId, createdBy, endsOthers: true, setsPassword: true },
        expiresAt: new Date(Date.now() + PASSWORD_LINK_MS),
      });
      return { id, path: `/new-password#${token}`, expiresAt };
    });
  }

  private async accountOf(transaction: Transaction, teamId: string, memberId: string): Promise<string> {
    const members = await this.queries.members(transaction, teamId);
    const member = members.find(({ id }) => id === memberId);
    if (!member) throw new NotFound('member', memberId);
    return member.accountId;
  }

  /** Stores a new link under the hash of its token. */
  private async store(
    transaction: Transaction,
    link: Omit<NewSignInLink, 'id' | 'tokenHash'>,
  ): Promise<{ id: string; token: string; expiresAt: string }> {
    const [id, token] = [newId(), newToken()];
    await this.queries.insertSignInLink(transaction, { ...link, id, tokenHash: hashToken(token) });
    return { id, token, expiresAt: link.expiresAt.toISOString() };
  }
}
