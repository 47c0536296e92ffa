import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

export const AUDIT_ACTIONS = ['added', 'changed', 'removed'] as const;
export const AUDIT_CLIENTS = ['sign-in', 'token', 'service'] as const;
/** What the trail records changes of: the tables that a trigger watches. */
export const AUDIT_KINDS = [
  'api-token',
  'bike',
  'decision',
  'former-member',
  'invitation',
  'member',
  'planned-run',
  'planned-session',
  'rider',
  'run',
  'service-entry',
  'session',
  'setup',
  'sign-in-link',
  'spacer-movement',
  'spring-unit',
  'team',
  'test-plan',
  'track',
  'unit-care',
  'work-order',
  'work-step',
] as const;

/** Who changed what, and when. Written by a trigger of the database in the transaction of the change; never changed. */
@Entity('audit_entry')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@Index('audit_entry_kind', ['teamId', 'kind', 'id'])
@Index('audit_entry_account', ['teamId', 'accountId', 'id'])
export class AuditEntryEntity extends TeamOwned {
  /** Null for what the service or the database's owner did by itself. */
  @Column('uuid', { nullable: true })
  accountId: string | null;

  /** The name of that time, for when the person is gone. */
  @Column('text', { nullable: true })
  accountName: string | null;

  @Column('text')
  client: (typeof AUDIT_CLIENTS)[number];

  @Column('uuid', { nullable: true })
  tokenId: string | null;

  @Column('text', { nullable: true })
  requestId: string | null;

  @Column('text')
  action: (typeof AUDIT_ACTIONS)[number];

  @Column('text')
  kind: (typeof AUDIT_KINDS)[number];

  @Column('uuid')
  recordId: string;

  /** Names of the fields that changed, never what is in them. */
  @Column('text', { array: true })
  fields: string[];
}
