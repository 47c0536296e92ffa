import type { WorkStep } from '@loamledger/spring';
import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** A step of a work order, and by whom it was done. */
@Entity('work_step')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('work_order', ['teamId', 'workOrderId'], ['teamId', 'id'])
@ForeignKey('spacer_movement', ['teamId', 'movementId'], ['teamId', 'id'])
@Index('work_step_place', ['teamId', 'workOrderId', 'position'], { unique: true })
@Index('work_step_movement', ['teamId', 'movementId'])
export class WorkStepEntity extends TeamOwned {
  @Column('uuid')
  workOrderId: string;

  /** 1, 2, 3 … */
  @Column('int')
  position: number;

  @Column('text')
  end: 'fork' | 'shock';

  @Column('text')
  step: WorkStep;

  @Column('timestamptz', { nullable: true })
  doneAt: Date | null;

  @Column('uuid', { nullable: true })
  doneBy: string | null;

  /** The movement of spacers that the step made; null: none, or not done. */
  @Column('uuid', { nullable: true })
  movementId: string | null;
}
