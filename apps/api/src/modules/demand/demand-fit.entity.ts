import type { DemandFit } from '@loamledger/evidence';
import { Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';

/** The demand model fitted to all ring readings of one end of a team's bikes. */
@Entity('demand_fit')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
export class DemandFitEntity {
  @PrimaryColumn('uuid')
  teamId: string;

  @PrimaryColumn('text')
  end: 'fork' | 'shock';

  /** The team's evidence version that it was fitted to. */
  @Column('int')
  evidenceVersion: number;

  @Column('text')
  modelVersion: string;

  @Column('jsonb')
  fit: DemandFit;

  @Column('timestamptz', { default: () => 'now()' })
  fittedAt: Date;
}
