import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** What the team has entered of a unit's manual. Never changed: the newest counts. */
@Entity('unit_care')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('spring_unit', ['teamId', 'unitId'], ['teamId', 'id'])
@Index('unit_care_unit', ['teamId', 'unitId', 'id'])
export class UnitCareEntity extends TeamOwned {
  @Column('uuid')
  unitId: string;

  /** Riding between two services, s; null: not entered. */
  @Column('float8', { nullable: true })
  serviceInterval: number | null;

  /** Torque of the air cap, N·m; null: not entered. */
  @Column('float8', { nullable: true })
  capTorque: number | null;

  @Column('uuid')
  enteredBy: string;
}
