import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** The work that makes a bike what a revision of its set-up says, from what was in it. Never changed: its steps are ticked. */
@Entity('work_order')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('bike', ['teamId', 'bikeId'], ['teamId', 'id'])
@ForeignKey('setup', ['teamId', 'fromSetupId'], ['teamId', 'id'])
@ForeignKey('setup', ['teamId', 'toSetupId'], ['teamId', 'id'])
@Index('work_order_bike', ['teamId', 'bikeId', 'id'])
@Index('work_order_setup', ['teamId', 'toSetupId'], { unique: true })
export class WorkOrderEntity extends TeamOwned {
  @Column('uuid')
  bikeId: string;

  /** What was in the bike; null: nothing is known of it. */
  @Column('uuid', { nullable: true })
  fromSetupId: string | null;

  @Column('uuid')
  toSetupId: string;

  @Column('uuid')
  madeBy: string;
}
