import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';
import type { Role } from '../../platform/http/scope.js';

/** A single-use link into the team. */
@Entity('invitation')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('rider', ['teamId', 'riderId'], ['teamId', 'id'])
@ForeignKey('account', ['createdBy'], ['id'], { onDelete: 'CASCADE' })
@Index('invitation_token', ['teamId', 'tokenHash'], { unique: true })
export class InvitationEntity extends TeamOwned {
  @Column('text')
  tokenHash: string;

  @Column('text')
  role: Role;

  @Column('uuid', { nullable: true })
  riderId: string | null;

  @Column('timestamptz')
  expiresAt: Date;

  @Column('timestamptz', { nullable: true })
  usedAt: Date | null;

  /** The mechanic who made it, with whose place in the team it ends; null for those of an older version, which are no use. */
  @Column('uuid', { nullable: true })
  createdBy: string | null;
}
