import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** A single-use link by which a rider of the team signs in on another phone, or a member sets a new password. */
@Entity('sign_in_link')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('account', ['accountId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('account', ['createdBy'], ['id'], { onDelete: 'CASCADE' })
@Index('sign_in_link_token', ['teamId', 'tokenHash'], { unique: true })
export class SignInLinkEntity extends TeamOwned {
  @Column('text')
  tokenHash: string;

  @Column('uuid')
  accountId: string;

  /** Whether using it ends the rider's other sign-ins: the phone was lost. */
  @Column('boolean')
  endsOthers: boolean;

  /** Whether it is for a new password, and not for signing in. */
  @Column('boolean')
  setsPassword: boolean;

  @Column('timestamptz')
  expiresAt: Date;

  @Column('timestamptz', { nullable: true })
  usedAt: Date | null;

  /** The mechanic who made it, with whose place in the team it ends; null for those of an older version, which are no use. */
  @Column('uuid', { nullable: true })
  createdBy: string | null;
}
