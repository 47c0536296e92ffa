import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';
import type { Role } from '../../platform/http/scope.js';

/** A person's place in a team. */
@Entity('member')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('account', ['accountId'], ['id'])
@ForeignKey('rider', ['teamId', 'riderId'], ['teamId', 'id'])
@Index('member_account', ['teamId', 'accountId'], { unique: true })
@Index('member_teams_of_account', ['accountId'])
export class MemberEntity extends TeamOwned {
  @Column('uuid')
  accountId: string;

  @Column('text')
  role: Role;

  /** The rider that this person is; needed for the role rider. */
  @Column('uuid', { nullable: true })
  riderId: string | null;
}
