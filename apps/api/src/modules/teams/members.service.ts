import { Injectable } from '@nestjs/common';
import { v5 } from 'uuid';
import { newId } from '../../platform/database/new-id.js';
import { IdempotencyConflict } from '../../platform/database/idempotency-conflict.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { NotFound } from '../../platform/errors/refusal.js';
import type { Role, TeamScope } from '../../platform/http/scope.js';
import { hashToken, newToken } from '../../platform/security/tokens.js';
import { MembersQueries, type MemberRow } from './members.queries.js';
import type { InvitationDto, InvitationInputDto, MemberDto, TeamDto, TeamInputDto } from './teams.dto.js';
import { LastMechanic, RiderRoleNeedsRider } from './teams.errors.js';

const INVITATION_DAYS = 3;
const DAY_MS = 86_400_000;

@Injectable()
export class MembersService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: MembersQueries,
  ) {}

  /**
   * Makes a team with its maker as mechanic. A repeated request finds the first one's team by the key; it makes
   * nobody a member, since its maker may have left in the meantime.
   */
  async createTeam(accountId: string, input: TeamInputDto, idempotencyKey?: string): Promise<TeamDto> {
    const id = idempotencyKey ? v5(idempotencyKey, accountId) : newId();
    return this.database.inTeam({ teamId: id, accountId }, async (transaction) => {
      if (await this.queries.insertTeam(transaction, { id, name: input.name })) {
        const place = { teamId: id, accountId, role: 'mechanic' as const, riderId: null };
        await this.queries.ensureMember(transaction, place);
      }
      const { name } = await this.queries.team(transaction, id);
      if (idempotencyKey && name !== input.name) throw new IdempotencyConflict(idempotencyKey);
      return { id, name };
    });
  }

  async team(scope: TeamScope): Promise<TeamDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const { id, name } = await this.queries.team(transaction, scope.teamId);
      return { id, name };
    });
  }

  async members(scope: TeamScope): Promise<MemberDto[]> {
    return this.database.inTeam(scope, (transaction) => this.queries.members(transaction, scope.teamId));
  }

  async invite(scope: TeamScope, input: InvitationInputDto): Promise<InvitationDto> {
    const riderId = input.riderId ?? null;
    if (input.role === 'rider' && !riderId) throw new RiderRoleNeedsRider();
    // A repeated request makes another link: a stored answer would be its token in the clear.
    return this.database.inTeam(scope, async (transaction) => {
      const token = newToken();
      const expiresAt = new Date(Date.now() + INVITATION_DAYS * DAY_MS);
      const id = newId();
      await this.queries.insertInvitation(transaction, {
        teamId: scope.teamId,
        id,
        tokenHash: hashToken(token),
        role: input.role,
        riderId,
        expiresAt,
        createdBy: scope.accountId,
      });
      // Behind the # the token is never sent to a server or written to its log by the browser.
      return { id, path: `/join#${token}`, expiresAt: expiresAt.toISOString() };
    });
  }

  /** Uses an invitation for `accountId`; false if it was used in the meantime. */
  async useInvitation(
    invitation: { teamId: string; id: string; role: Role; riderId: string | null },
    accountId: string,
  ): Promise<boolean> {
    const { teamId, id, role, riderId } = invitation;
    return this.database.inTeam({ teamId, accountId }, async (transaction) => {
      if (!(await this.queries.useInvitation(transaction, teamId, id))) return false;
      if (role !== 'mechanic')
        await this.refuseLastMechanic(transaction, teamId, (m) => m.accountId === accountId);
      await this.queries.ensureMember(transaction, { teamId, accountId, role, riderId });
      return true;
    });
  }

  async removeMember(scope: TeamScope, id: string): Promise<void> {
    await this.database.inTeam(scope, async (transaction) => {
      const members = await this.queries.members(transaction, scope.teamId);
      if (!members.some((member) => member.id === id)) throw new NotFound('member', id);
      await this.refuseLastMechanic(transaction, scope.teamId, (member) => member.id === id);
      await this.queries.deleteMember(transaction, scope.teamId, id);
    });
  }

  /** @throws LastMechanic when who is meant is the team's only mechanic. */
  private async refuseLastMechanic(
    transaction: Transaction,
    teamId: string,
    isMeant: (member: MemberRow) => boolean,
  ): Promise<void> {
    await this.queries.lockTeam(transaction, teamId);
    const members = await this.queries.members(transaction, teamId);
    const mechanics = members.filter(({ role }) => role === 'mechanic');
    if (mechanics.length === 1 && mechanics.some(isMeant)) throw new LastMechanic();
  }
}
