import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('team')
export class TeamEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('text')
  name: string;

  /** Counts every change of what the demand model reads: a stored fit of an older version is stale. */
  @Column('int', { default: 0 })
  evidenceVersion: number;

  @Column('timestamptz', { default: () => 'now()' })
  createdAt: Date;
}
