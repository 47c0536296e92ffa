import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** The time of one section, by the name that the track gave it. */
export interface SectionTime {
  section: string;
  /** s */
  time: number;
}

/** One run down a track. Never edited: a spoilt one is voided with a reason, and stays. */
@Entity('run')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('session', ['teamId', 'sessionId', 'trackId'], ['teamId', 'id', 'trackId'])
@ForeignKey('rider', ['teamId', 'riderId'], ['teamId', 'id'])
@ForeignKey('bike', ['teamId', 'bikeId'], ['teamId', 'id'])
@ForeignKey('setup', ['teamId', 'setupId'], ['teamId', 'id'])
@Index('run_order', ['teamId', 'sessionId', 'riderId', 'orderInSession'], { unique: true })
@Index('run_track', ['teamId', 'trackId', 'id'])
@Index('run_rider', ['teamId', 'riderId', 'id'])
@Index('run_bike', ['teamId', 'bikeId', 'id'])
@Index('run_setup', ['teamId', 'setupId', 'id'])
export class RunEntity extends TeamOwned {
  @Column('uuid')
  sessionId: string;

  @Column('uuid')
  trackId: string;

  @Column('uuid')
  riderId: string;

  @Column('uuid')
  bikeId: string;

  @Column('uuid')
  setupId: string;

  /** 1, 2, 3 … for each rider in the session; a voided run keeps its number. */
  @Column('int')
  orderInSession: number;

  @Column('timestamptz', { nullable: true })
  startedAt: Date | null;

  /** s; null: not timed. */
  @Column('float8', { nullable: true })
  time: number | null;

  /** In riding order; sections without a time are left out. */
  @Column('jsonb', { default: [] })
  sectionTimes: SectionTime[];

  /** Bottom-outs the rider felt; null: not said. */
  @Column('int', { nullable: true })
  forkBottomOuts: number | null;

  @Column('int', { nullable: true })
  shockBottomOuts: number | null;

  /** Ratings 1 (bad) to 5 (good); null: not given. */
  @Column('int', { nullable: true })
  supportRating: number | null;

  @Column('int', { nullable: true })
  comfortRating: number | null;

  @Column('int', { nullable: true })
  rideHeightRating: number | null;

  @Column('int', { nullable: true })
  fatigueRating: number | null;

  @Column('text', { default: '' })
  note: string;

  @Column('uuid')
  loggedBy: string;

  @Column('timestamptz', { nullable: true })
  voidedAt: Date | null;

  @Column('text', { nullable: true })
  voidReason: string | null;

  @Column('uuid', { nullable: true })
  voidedBy: string | null;

  /** Whether the ring readings of a voided run still say something about the track. */
  @Column('boolean', { default: true })
  readingsCount: boolean;
}
