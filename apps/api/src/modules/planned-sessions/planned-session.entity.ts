import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** What a team means to ride: on which track, when, who, and by which test plan if by one. */
@Entity('planned_session')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('track', ['teamId', 'trackId'], ['teamId', 'id'])
@ForeignKey('test_plan', ['teamId', 'testPlanId'], ['teamId', 'id'])
@Index('planned_session_day', ['teamId', 'trackId', 'day'])
export class PlannedSessionEntity extends TeamOwned {
  @Column('uuid')
  trackId: string;

  @Column('date')
  day: string;

  /** By the clock at the track, `09:30`. */
  @Column('text')
  startsAt: string;

  /** Riders are never removed from a team, so that these are always there. */
  @Column('uuid', { array: true })
  riderIds: string[];

  /** The test plan that is ridden; null: ride and log. */
  @Column('uuid', { nullable: true })
  testPlanId: string | null;

  @Column('text', { default: '' })
  note: string;

  @Column('int', { default: 1 })
  version: number;
}
