import { Column, Entity, ForeignKey, Index } from 'typeorm';
import type { StoredAnswer } from './stored-answer.js';
import type { Condition } from '../sessions/conditions.js';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** A baseline as it was offered: never changed, so that what was taken can be told years later. */
@Entity('baseline')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('bike', ['teamId', 'bikeId'], ['teamId', 'id'])
@ForeignKey('rider', ['teamId', 'riderId'], ['teamId', 'id'])
@ForeignKey('track', ['teamId', 'trackId'], ['teamId', 'id'])
@ForeignKey('setup', ['teamId', 'setupId'], ['teamId', 'id'])
@Index('baseline_latest', ['teamId', 'trackId', 'bikeId', 'id'])
export class BaselineEntity extends TeamOwned {
  @Column('uuid')
  bikeId: string;

  @Column('uuid')
  riderId: string;

  @Column('uuid')
  trackId: string;

  /** The set-up that was in the bike. */
  @Column('uuid', { nullable: true })
  setupId: string | null;

  /** The ground that it is for. */
  @Column('text')
  condition: Condition;

  /** K; null: from the altitude by the standard atmosphere. */
  @Column('float8', { nullable: true })
  airTemperature: number | null;

  /** Absolute, Pa; null: from the altitude by the standard atmosphere. */
  @Column('float8', { nullable: true })
  stationPressure: number | null;

  /** Hash of everything the answer depends on: equal fingerprints, equal answers. */
  @Column('text')
  fingerprint: string;

  @Column('int')
  evidenceVersion: number;

  @Column('text')
  engineVersion: string;

  @Column('text')
  modelVersion: string;

  /** The runs behind it. */
  @Column('int')
  runCount: number;

  @Column('jsonb')
  answer: StoredAnswer;
}
