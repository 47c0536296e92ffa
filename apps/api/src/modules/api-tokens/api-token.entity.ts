import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';
import type { TokenScopeName } from '../../platform/http/access.js';

/** A token by which a script acts for the person who made it. */
@Entity('api_token')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('account', ['accountId'], ['id'])
@Index('api_token_hash', ['teamId', 'tokenHash'], { unique: true })
@Index('api_token_of_hash', ['tokenHash'])
export class ApiTokenEntity extends TeamOwned {
  /** Who made it: it ends with their place in the team. */
  @Column('uuid')
  accountId: string;

  @Column('text')
  name: string;

  @Column('text')
  tokenHash: string;

  @Column('text', { array: true })
  scopes: TokenScopeName[];

  /** To the nearest ten minutes. */
  @Column('timestamptz', { nullable: true })
  lastUsedAt: Date | null;

  @Column('timestamptz', { nullable: true })
  revokedAt: Date | null;
}
