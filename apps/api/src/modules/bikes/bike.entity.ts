import { Column, Entity, ForeignKey, Index } from 'typeorm';
import type { Source } from '../../platform/database/source.js';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

export const BIKE_CATEGORIES = ['trail', 'enduro', 'downhill'] as const;
export type BikeCategory = (typeof BIKE_CATEGORIES)[number];

/** Figures of a bike that may be assumed. */
export type BikeFigure =
  'mass' | 'frontUnsprungMass' | 'rearUnsprungMass' | 'headAngle' | 'frontLoadShare' | 'leverageTable';

/** A rider's bike. Figures in SI units: m, kg, rad. */
@Entity('bike')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('rider', ['teamId', 'riderId'], ['teamId', 'id'])
@ForeignKey('spring_unit', ['teamId', 'forkUnitId'], ['teamId', 'id'])
@ForeignKey('spring_unit', ['teamId', 'shockUnitId'], ['teamId', 'id'])
@Index('bike_name', ['teamId', 'name'], { unique: true })
@Index('bike_rider', ['teamId', 'riderId'])
export class BikeEntity extends TeamOwned {
  @Column('text')
  name: string;

  @Column('uuid')
  riderId: string;

  @Column('text')
  category: BikeCategory;

  /** Mass of the bike, kg. */
  @Column('float8')
  mass: number;

  /** Mass of wheel, brake and lower legs that does not stand on the spring, kg. */
  @Column('float8')
  frontUnsprungMass: number;

  @Column('float8')
  rearUnsprungMass: number;

  @Column('float8')
  headAngle: number;

  @Column('float8')
  wheelbase: number;

  /** Wheel travel as the frame states it, m; the engine takes the fork's stroke and the leverage table. */
  @Column('float8')
  frontWheelTravel: number;

  @Column('float8')
  rearWheelTravel: number;

  /** Share of bike and rider that stands on the front wheel in the attack position; null: assumed. */
  @Column('float8', { nullable: true })
  frontLoadShare: number | null;

  /** Centre of mass of bike and rider, m above the ground and ahead of the rear contact; null: assumed. */
  @Column('float8', { nullable: true })
  centreOfMassHeight: number | null;

  @Column('float8', { nullable: true })
  centreOfMassToRear: number | null;

  /** Leverage ratio (wheel travel per shock travel) over shock travel, m; null without a shock. */
  @Column('jsonb', { nullable: true })
  leverageTable: { shockTravel: number; leverageRatio: number }[] | null;

  @Column('jsonb')
  sources: Partial<Record<BikeFigure, Source>>;

  @Column('uuid')
  forkUnitId: string;

  @Column('uuid', { nullable: true })
  shockUnitId: string | null;

  @Column('int', { default: 1 })
  version: number;
}
