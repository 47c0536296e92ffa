import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { Device } from '../../platform/http/request-origin.js';

/** A sign-in that has not ended: the browser holds the token, we hold its hash. */
@Entity('sign_in')
@ForeignKey('account', ['accountId'], ['id'], { onDelete: 'CASCADE' })
@Index('sign_in_account', ['accountId', 'id'], { unique: true })
export class SignInEntity {
  @PrimaryColumn('text')
  tokenHash: string;

  /** Names the sign-in to its owner without telling the token. */
  @Column('uuid')
  id: string;

  @Column('uuid')
  accountId: string;

  @Column('text')
  device: Device;

  @Column('timestamptz', { default: () => 'now()' })
  createdAt: Date;

  /** To the nearest ten minutes. */
  @Column('timestamptz', { default: () => 'now()' })
  lastSeenAt: Date;

  /** It ends then, however much it is used. */
  @Column('timestamptz')
  expiresAt: Date;
}
