import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** What one arm of a plan means on one bike: an arm is a named change, with one set-up for each bike that is ridden. */
@Entity('test_plan_arm')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('test_plan', ['teamId', 'planId'], ['teamId', 'id'])
@ForeignKey('bike', ['teamId', 'bikeId'], ['teamId', 'id'])
@ForeignKey('setup', ['teamId', 'setupId'], ['teamId', 'id'])
@Index('test_plan_arm_letter', ['teamId', 'planId', 'letter', 'bikeId'], { unique: true })
export class TestPlanArmEntity extends TeamOwned {
  @Column('uuid')
  planId: string;

  @Column('text')
  name: string;

  @Column('text')
  letter: string;

  /** Whether it is the arm that the others are compared with. */
  @Column('boolean')
  current: boolean;

  @Column('uuid')
  bikeId: string;

  @Column('uuid')
  setupId: string;
}
