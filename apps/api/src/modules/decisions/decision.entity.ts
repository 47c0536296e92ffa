import { Column, Entity, ForeignKey, Index } from 'typeorm';
import type { ExpectedHit, OutcomeVerdict } from '@loamledger/evidence';
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
  /** The forecast behind them; missing in decisions from before it was kept. */
  hit?: ExpectedHit | null;
}

/** What the runs on a set-up showed of one end. */
export interface ObservedEnd {
  /** Ring readings that count, and those of them that are only a bound of the hit. */
  readings: number;
  atLeast: number;
  atMost: number;
  medianTravelMm: number | null;
  mostTravelMm: number | null;
  /** Observed less expected hit height in standard errors; positive: more travel. */
  standardErrors: number | null;
  /** Runs of which it is known whether they bottomed out, and those that did. */
  bottomOutRuns: number;
  bottomedRuns: number;
  /** Chance of at least and of at most as many, by the expected risk. */
  asManyP: number | null;
  asFewP: number | null;
  verdict: OutcomeVerdict;
  sentence: string;
}

/** What the runs on a set-up showed. */
export interface Observed {
  /** Runs that count, and void ones. */
  runs: number;
  voided: number;
  fork: ObservedEnd | null;
  shock: ObservedEnd | null;
}

/** Why a set-up was changed, what was expected, and later what came of it. */
@Entity('decision')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('bike', ['teamId', 'bikeId'], ['teamId', 'id'])
@ForeignKey('setup', ['teamId', 'fromSetupId'], ['teamId', 'id'])
@ForeignKey('setup', ['teamId', 'toSetupId'], ['teamId', 'id'])
@ForeignKey('track', ['teamId', 'trackId'], ['teamId', 'id'])
@ForeignKey('baseline', ['teamId', 'baselineId'], ['teamId', 'id'])
@ForeignKey('rider', ['teamId', 'riderId'], ['teamId', 'id'])
@ForeignKey('test_plan', ['teamId', 'testPlanId'], ['teamId', 'id'])
@Index('decision_bike', ['teamId', 'bikeId', 'id'])
@Index('decision_rider', ['teamId', 'riderId', 'id'])
@Index('decision_track', ['teamId', 'trackId', 'id'])
@Index('decision_setup', ['teamId', 'toSetupId'], { unique: true })
export class DecisionEntity extends TeamOwned {
  @Column('uuid')
  bikeId: string;

  /** The bike's rider at that time. */
  @Column('uuid')
  riderId: string;

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

  /** The test plan whose comparison it rests on, if on one. */
  @Column('uuid', { nullable: true })
  testPlanId: string | null;

  /** Runs behind the expectation; null: nothing was expected. */
  @Column('int', { nullable: true })
  evidenceRuns: number | null;

  @Column('text')
  reason: string;

  /** Figures of the engine and the demand model at that time, frozen. */
  @Column('jsonb', { nullable: true })
  expected: { fork: ExpectedEnd | null; shock: ExpectedEnd | null } | null;

  @Column('uuid')
  decidedBy: string;

  /** What had been observed when the outcome was entered, frozen; null while it is computed. */
  @Column('jsonb', { nullable: true })
  observed: Observed | null;

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
