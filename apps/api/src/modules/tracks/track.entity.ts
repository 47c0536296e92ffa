import type { Gate } from '@loamledger/evidence';
import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

@Entity('track')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@Index('track_name', ['teamId', 'name'], { unique: true })
export class TrackEntity extends TeamOwned {
  @Column('text')
  name: string;

  /** Altitude of the place where pressures are set, m above sea level. */
  @Column('float8')
  altitude: number;

  @Column('text', { default: '' })
  note: string;

  /** Names of the sections in riding order. */
  @Column('jsonb')
  sections: string[];

  /** Where run times begin; null: not told. */
  @Column('jsonb', { nullable: true })
  startGate: Gate | null;

  /** Where run times end; null: not told. */
  @Column('jsonb', { nullable: true })
  finishGate: Gate | null;

  @Column('int', { default: 1 })
  version: number;
}
