import { Check, Column, Entity, ForeignKey, Index } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** Why a stock changes by hand: what a person may say. */
export const HAND_REASONS = ['counted', 'bought', 'lost', 'put in', 'taken out'] as const;
export const MOVEMENT_REASONS = [...HAND_REASONS, 'reversed'] as const;
export type HandReason = (typeof HAND_REASONS)[number];
export type MovementReason = (typeof MOVEMENT_REASONS)[number];

/**
 * A change of what lies in stock of spacers of one size. Never changed and never removed: a wrong one is reversed by
 * another, which names it.
 */
@Entity('spacer_movement')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('spacer_movement', ['teamId', 'reversesId'], ['teamId', 'id'])
@Index('spacer_movement_number', ['teamId', 'unitKind', 'spacerSize', 'number'], { unique: true })
@Index('spacer_movement_reversed', ['teamId', 'reversesId'], { unique: true })
@Check('spacer_movement_in_stock', 'in_stock >= 0')
export class SpacerMovementEntity extends TeamOwned {
  /** Which units they fit. */
  @Column('text')
  unitKind: 'fork' | 'shock';

  /** Volume of one, tenths of mL. */
  @Column('int')
  spacerSize: number;

  /** 1, 2, 3 … for each size: two movements at once cannot both be the next. */
  @Column('int')
  number: number;

  @Column('int')
  change: number;

  /** What lies in stock after it. */
  @Column('int')
  inStock: number;

  @Column('text')
  reason: MovementReason;

  @Column('text', { default: '' })
  note: string;

  /** Null: brought over from the figure that each unit had before stock was kept. */
  @Column('uuid', { nullable: true })
  enteredBy: string | null;

  @Column('uuid', { nullable: true })
  reversesId: string | null;
}
