import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';
import type { Role } from '../../platform/http/scope.js';

/** A single-use link into the team. */
@Entity('invitation')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('rider', ['teamId', 'riderId'], ['teamId', 'id'])
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
}
