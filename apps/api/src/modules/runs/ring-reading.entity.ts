import { Column, Entity, ForeignKey, Index } from 'typeorm';
import type { EndInputs } from '../suspension/end-inputs.js';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

export type HitKind = 'exact' | 'at-least' | 'at-most';

/** What the O-ring showed after a run, and the hit height that the engine finds behind it. */
@Entity('ring_reading')
@ForeignKey('run', ['teamId', 'runId'], ['teamId', 'id'], { onDelete: 'CASCADE' })
@Index('ring_reading_end', ['teamId', 'runId', 'end'], { unique: true })
export class RingReadingEntity extends TeamOwned {
  @Column('uuid')
  runId: string;

  @Column('text')
  end: 'fork' | 'shock';

  /** Travel used, m along the fork axis or the shock shaft. */
  @Column('float8')
  travelUsed: number;

  /** Standard uncertainty of the reading, m. */
  @Column('float8')
  readingSd: number;

  /** null, like all that follows: the reading tells nothing. */
  @Column('text', { nullable: true })
  hitKind: HitKind | null;

  /** m, with its 90 % interval. */
  @Column('float8', { nullable: true })
  hitHeight: number | null;

  @Column('float8', { nullable: true })
  hitLower: number | null;

  /** null also for a reading that says 'at least': unbounded. */
  @Column('float8', { nullable: true })
  hitUpper: number | null;

  @Column('float8', { nullable: true })
  logHeight: number | null;

  @Column('float8', { nullable: true })
  logSd: number | null;

  /** Versions of the engine and of every record behind the hit height: another basis, another height. */
  @Column('text')
  basis: string;

  /** Everything the engine was given, SI units, so that the figure can be made again. */
  @Column('jsonb')
  inputs: EndInputs;
}
