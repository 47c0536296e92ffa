import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import type { Transaction } from '../../platform/database/team-database.js';
import type { Role } from '../../platform/http/scope.js';
import { InvitationEntity } from './invitation.entity.js';
import { MemberEntity } from './member.entity.js';
import { SignInLinkEntity } from './sign-in-link.entity.js';
import { TeamEntity } from './team.entity.js';

export interface MemberRow {
  id: string;
  accountId: string;
  displayName: string;
  role: Role;
  riderId: string | null;
}

export type NewSignInLink = Pick<
  SignInLinkEntity,
  'teamId' | 'id' | 'tokenHash' | 'accountId' | 'endsOthers' | 'setsPassword' | 'expiresAt' | 'createdBy'
>;

@Injectable()
export class MembersQueries {
  /** Makes the team; false if it is there already, as after a repeated request. */
  async insertTeam(transaction: Transaction, team: Pick<TeamEntity, 'id' | 'name'>): Promise<boolean> {
    const result = await transaction
      .createQueryBuilder()
      .insert()
      .into(TeamEntity)
      .values(team)
      .orIgnore()
      .returning('id')
      .execute();
    return (result.raw as unknown[]).length > 0;
  }

  /** Makes others who would change the team's members wait for the end of this transaction. */
  async lockTeam(transaction: Transaction, teamId: string): Promise<void> {
    await transaction.query('select from team where id = $1 for no key update', [teamId]);
  }

  async team(transaction: Transaction, teamId: string): Promise<TeamEntity> {
    return transaction.findOneByOrFail(TeamEntity, { id: teamId });
  }

  /** Makes the person a member, or gives the member there already is the new role. */
  async ensureMember(
    transaction: Transaction,
    member: Pick<MemberEntity, 'teamId' | 'accountId' | 'role' | 'riderId'>,
  ): Promise<void> {
    await transaction
      .createQueryBuilder()
      .insert()
      .into(MemberEntity)
      .values({ ...member, id: newId() })
      .orUpdate(['role', 'rider_id'], ['team_id', 'account_id'])
      .execute();
  }

  async members(transaction: Transaction, teamId: string): Promise<MemberRow[]> {
    return transaction.query(
      `select member.id, member.account_id as "accountId", account.display_name as "displayName",
              member.role, member.rider_id as "riderId"
       from member join account on account.id = member.account_id
       where member.team_id = $1 order by member.id`,
      [teamId],
    );
  }

  async deleteMember(transaction: Transaction, teamId: string, id: string): Promise<void> {
    await transaction.delete(MemberEntity, { teamId, id });
  }

  async insertInvitation(
    transaction: Transaction,
    invitation: Pick<
      InvitationEntity,
      'teamId' | 'id' | 'tokenHash' | 'role' | 'riderId' | 'expiresAt' | 'createdBy'
    >,
  ): Promise<void> {
    await transaction.insert(InvitationEntity, invitation);
  }

  /** Whether the person rides in this team, does nothing else in it, and is in no other. */
  async onlyRidesIn(transaction: Transaction, accountId: string, teamId: string): Promise<boolean> {
    const [row]: { answer: boolean }[] = await transaction.query('select only_rides_in($1, $2) as answer', [
      accountId,
      teamId,
    ]);
    return row?.answer === true;
  }

  /** Whether the person is in this team and in no other. */
  async onlyInTeam(transaction: Transaction, accountId: string, teamId: string): Promise<boolean> {
    const [row]: { answer: boolean }[] = await transaction.query('select only_in_team($1, $2) as answer', [
      accountId,
      teamId,
    ]);
    return row?.answer === true;
  }

  async insertSignInLink(transaction: Transaction, link: NewSignInLink): Promise<void> {
    await transaction.insert(SignInLinkEntity, link);
  }

  /** Marks the invitation as used; false if somebody was faster, or who made it is no mechanic any more. */
  async useInvitation(transaction: Transaction, teamId: string, id: string): Promise<boolean> {
    const result = await transaction
      .createQueryBuilder()
      .update(InvitationEntity)
      .set({ usedAt: () => 'now()' })
      .where('team_id = :teamId and id = :id and used_at is null and still_mechanic(created_by, team_id)', {
        teamId,
        id,
      })
      .execute();
    return result.affected === 1;
  }
}
