import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** The runs that baselines of one version of the team's evidence rest on: once for all that were offered then. */
@Entity('baseline_runs')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@Index('baseline_runs_evidence', ['teamId', 'evidenceVersion'], { unique: true })
export class BaselineRunsEntity extends TeamOwned {
  @Column('int')
  evidenceVersion: number;

  @Column('uuid', { array: true })
  runIds: string[];
}
