import type { PlannedRun } from '@loamledger/evidence';
import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** One run of a plan, and the run that was logged for it. */
@Entity('planned_run')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('test_plan', ['teamId', 'planId'], ['teamId', 'id'])
@ForeignKey('test_plan_arm', ['teamId', 'armId'], ['teamId', 'id'])
@ForeignKey('rider', ['teamId', 'riderId'], ['teamId', 'id'])
@ForeignKey('run', ['teamId', 'runId'], ['teamId', 'id'])
@Index('planned_run_place', ['teamId', 'planId', 'riderId', 'position'])
@Index('planned_run_run', ['teamId', 'runId'], { unique: true })
export class PlannedRunEntity extends TeamOwned {
  @Column('uuid')
  planId: string;

  @Column('uuid')
  riderId: string;

  /** The arm on the rider's bike. */
  @Column('uuid')
  armId: string;

  @Column('text')
  kind: PlannedRun['kind'];

  /** 1, 2, 3 … for each rider in the plan, warm-ups included. */
  @Column('int')
  position: number;

  @Column('uuid', { nullable: true })
  runId: string | null;

  /** When a new order of the rest took its place; null: it stands. */
  @Column('timestamptz', { nullable: true })
  droppedAt: Date | null;
}
