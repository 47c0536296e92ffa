import { Column, Entity, ForeignKey, Index } from 'typeorm';
import type { Source } from '../../platform/database/source.js';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

@Entity('rider')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@Index('rider_name', ['teamId', 'name'], { unique: true })
export class RiderEntity extends TeamOwned {
  @Column('text')
  name: string;

  /** Mass ready to ride, kg. */
  @Column('float8')
  readyMass: number;

  @Column('text')
  readyMassSource: Source;

  /** Accepted probability that a run bottoms out. */
  @Column('float8')
  acceptedRisk: number;

  /** Wanted sag as fractions of the stroke. */
  @Column('float8')
  forkSagLow: number;

  @Column('float8')
  forkSagHigh: number;

  @Column('float8')
  shockSagLow: number;

  @Column('float8')
  shockSagHigh: number;

  /** Wanted travel left at the 95th-percentile hit, as a fraction of the stroke. */
  @Column('float8')
  forkReserve: number;

  @Column('float8')
  shockReserve: number;

  @Column('int', { default: 1 })
  version: number;
}
