import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** A revision of a bike's set-up. Never changed: the next one follows it. Pressures are gauge, Pa. */
@Entity('setup')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('bike', ['teamId', 'bikeId'], ['teamId', 'id'])
@ForeignKey('spring_unit', ['teamId', 'forkUnitId'], ['teamId', 'id'])
@ForeignKey('spring_unit', ['teamId', 'shockUnitId'], ['teamId', 'id'])
@ForeignKey('setup', ['teamId', 'previousId'], ['teamId', 'id'])
@Index('setup_revision', ['teamId', 'bikeId', 'revision'], { unique: true })
export class SetupEntity extends TeamOwned {
  @Column('uuid')
  bikeId: string;

  /** 1, 2, 3 … for each bike. */
  @Column('int')
  revision: number;

  @Column('uuid', { nullable: true })
  previousId: string | null;

  @Column('uuid')
  forkUnitId: string;

  @Column('float8')
  forkPressure: number;

  @Column('int')
  forkSpacers: number;

  /** Clicks from fully closed; null: not recorded. */
  @Column('int', { nullable: true })
  forkRebound: number | null;

  @Column('int', { nullable: true })
  forkCompression: number | null;

  @Column('uuid', { nullable: true })
  shockUnitId: string | null;

  @Column('float8', { nullable: true })
  shockPressure: number | null;

  @Column('int', { nullable: true })
  shockSpacers: number | null;

  @Column('int', { nullable: true })
  shockRebound: number | null;

  @Column('int', { nullable: true })
  shockCompression: number | null;

  /** Where and how warm it was filled; null: as pumped at the track on the day of the run. */
  @Column('float8', { nullable: true })
  filledAltitude: number | null;

  @Column('float8', { nullable: true })
  filledTemperature: number | null;

  @Column('text', { default: '' })
  note: string;

  @Column('uuid')
  createdBy: string;
}
