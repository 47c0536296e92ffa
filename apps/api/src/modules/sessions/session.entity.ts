import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';
import type { Condition } from './conditions.js';

/** A day, or part of one, on a track under the same conditions. */
@Entity('session')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('track', ['teamId', 'trackId'], ['teamId', 'id'])
// A run names its session and its track together: the pair must exist.
@Index('session_track', ['teamId', 'id', 'trackId'], { unique: true })
@Index('session_day', ['teamId', 'trackId', 'day'])
export class SessionEntity extends TeamOwned {
  @Column('uuid')
  trackId: string;

  @Column('date')
  day: string;

  @Column('text')
  condition: Condition;

  /** K; null: not recorded. */
  @Column('float8', { nullable: true })
  airTemperature: number | null;

  /** Absolute air pressure read at the track, Pa; null: from the altitude by the standard atmosphere. */
  @Column('float8', { nullable: true })
  stationPressure: number | null;

  @Column('text', { default: '' })
  note: string;

  @Column('int', { default: 1 })
  version: number;
}
