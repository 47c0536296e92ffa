import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

export const SERVICE_ENTRY_KINDS = ['service', 'hours'] as const;
export type ServiceEntryKind = (typeof SERVICE_ENTRY_KINDS)[number];

/**
 * A service that was done, or riding that no run tells of. Never changed and never removed: a wrong one is taken back by
 * another, which names it.
 */
@Entity('service_entry')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('spring_unit', ['teamId', 'unitId'], ['teamId', 'id'])
@ForeignKey('service_entry', ['teamId', 'takesBackId'], ['teamId', 'id'])
@Index('service_entry_unit', ['teamId', 'unitId', 'id'])
@Index('service_entry_taken_back', ['teamId', 'takesBackId'], { unique: true })
export class ServiceEntryEntity extends TeamOwned {
  @Column('uuid')
  unitId: string;

  @Column('text')
  kind: ServiceEntryKind;

  @Column('date')
  day: string;

  /** Riding, s; null for a service. */
  @Column('float8', { nullable: true })
  riding: number | null;

  /** Who did the work, in words: it may be somebody outside the team. */
  @Column('text')
  doneBy: string;

  @Column('text', { default: '' })
  note: string;

  @Column('uuid')
  enteredBy: string;

  /** The entry that this one takes back; null: it stands for itself. */
  @Column('uuid', { nullable: true })
  takesBackId: string | null;
}
