import type { OrderTrend, RunScatter, TestPlan } from '@loamledger/evidence';
import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';
import type { Looks } from './looks.js';

/** A plan of runs that are to tell set-ups apart. Never edited: runs are attached to it, and it is closed. */
@Entity('test_plan')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('track', ['teamId', 'trackId'], ['teamId', 'id'])
@ForeignKey('session', ['teamId', 'sessionId', 'trackId'], ['teamId', 'id', 'trackId'])
@Index('test_plan_track', ['teamId', 'trackId', 'id'])
export class TestPlanEntity extends TeamOwned {
  @Column('text')
  name: string;

  @Column('uuid')
  trackId: string;

  /** The session that all runs belong to; null: any on the track. */
  @Column('uuid', { nullable: true })
  sessionId: string | null;

  /** The day it is meant for, if for one. */
  @Column('date', { nullable: true })
  day: string | null;

  /** Difference of time worth acting on, as a share. */
  @Column('float8')
  margin: number;

  @Column('text')
  trend: OrderTrend;

  @Column('int')
  seed: number;

  /** Whether riders see letters only until the plan is closed. */
  @Column('boolean')
  blind: boolean;

  /** When the times are looked at: agreed before the first run. */
  @Column('text')
  looks: Looks;

  @Column('int')
  warmUps: number;

  /** Counted runs of each arm by each rider. */
  @Column('int')
  runsAnArm: number;

  /** The plan with its order and what it can tell, as computed before the first run. */
  @Column('jsonb')
  made: TestPlan;

  /** The team's own scatter that the plan was made with; null: not known then. */
  @Column('jsonb', { nullable: true })
  scatter: RunScatter | null;

  @Column('uuid')
  createdBy: string;

  @Column('timestamptz', { nullable: true })
  closedAt: Date | null;

  @Column('uuid', { nullable: true })
  closedBy: string | null;

  @Column('text', { nullable: true })
  closingNote: string | null;

  @Column('int', { default: 1 })
  version: number;
}
