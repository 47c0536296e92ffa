import { Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

export const OUTCOMES = ['kept', 'taken back', 'superseded'] as const;
export type Outcome = (typeof OUTCOMES)[number];

/**
 * What was expected of one end; lengths in mm and shares in %, as the person who decided saw them. null: it was
 * decided for no track, so nothing is known of the hits.
 */
export interface ExpectedEnd {
  sagPct: number;
  medianTravelMm: number | null;
  travel95Mm: number | null;
  riskPct: number | null;
}

/** Why a set-up was changed, what was expected, and later what came of it. */
@Entity('decision')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('bike', ['teamId', 'bikeId'], ['teamId', 'id'])
@ForeignKey('setup', ['teamId', 'fromSetupId'], ['teamId', 'id'])
@ForeignKey('setup', ['teamId', 'toSetupId'], ['teamId', 'id'])
@ForeignKey('track', ['teamId', 'trackId'], ['teamId', 'id'])
@ForeignKey('baseline', ['teamId', 'baselineId'], ['teamId', 'id'])
@Index('decision_bike', ['teamId', 'bikeId', 'id'])
@Index('decision_setup', ['teamId', 'toSetupId'], { unique: true })
export class DecisionEntity extends TeamOwned {
  @Column('uuid')
  bikeId: string;

  @Column('uuid', { nullable: true })
  fromSetupId: string | null;

  @Column('uuid')
  toSetupId: string;

  /** The track it was decided for, if for one. */
  @Column('uuid', { nullable: true })
  trackId: string | null;

  /** The baseline that was taken, if one was. */
  @Column('uuid', { nullable: true })
  baselineId: string | null;

  @Column('text')
  reason: string;

  /** Figures of the engine and the demand model at that time, frozen. */
  @Column('jsonb', { nullable: true })
  expected: { fork: ExpectedEnd | null; shock: ExpectedEnd | null } | null;

  @Column('uuid')
  decidedBy: string;

  @Column('text', { nullable: true })
  outcome: Outcome | null;

  @Column('text', { nullable: true })
  outcomeNote: string | null;

  @Column('uuid', { nullable: true })
  outcomeBy: string | null;

  @Column('timestamptz', { nullable: true })
  outcomeAt: Date | null;

  @Column('int', { default: 1 })
  version: number;
}
