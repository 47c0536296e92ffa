import { Column, Entity, ForeignKey, Index } from 'typeorm';
import type { Source } from '../../platform/database/source.js';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';

/** Columns of the spring engine's parameters, SI units. */
export type UnitParameter =
  | 'stroke'
  | 'boreArea'
  | 'shaftArea'
  | 'positiveVolume'
  | 'spacerVolume'
  | 'negativeVolume'
  | 'transferPosition'
  | 'lowerLegVolume'
  | 'lowerLegArea'
  | 'bumperLength'
  | 'bumperEndForce'
  | 'damperLowSpeed'
  | 'damperKneeSpeed'
  | 'damperHighSpeed'
  | 'sealFriction'
  | 'thermalTimePositive'
  | 'thermalTimeNegative'
  | 'thermalTimeLowerLeg';

/** An air fork or air shock. Figures in SI units: m, m², m³, N, N·s/m, m/s, s, Pa. */
@Entity('spring_unit')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@Index('spring_unit_name', ['teamId', 'name'], { unique: true })
export class SpringUnitEntity extends TeamOwned {
  @Column('text')
  name: string;

  @Column('text')
  kind: 'fork' | 'shock';

  @Column('float8')
  stroke: number;

  @Column('float8')
  boreArea: number;

  @Column('float8')
  shaftArea: number;

  @Column('float8')
  positiveVolume: number;

  @Column('float8')
  spacerVolume: number;

  @Column('float8')
  negativeVolume: number;

  @Column('float8')
  transferPosition: number;

  @Column('float8')
  lowerLegVolume: number;

  @Column('float8')
  lowerLegArea: number;

  @Column('float8')
  bumperLength: number;

  @Column('float8')
  bumperEndForce: number;

  @Column('float8')
  damperLowSpeed: number;

  @Column('float8')
  damperKneeSpeed: number;

  @Column('float8')
  damperHighSpeed: number;

  @Column('float8')
  sealFriction: number;

  @Column('float8')
  thermalTimePositive: number;

  @Column('float8')
  thermalTimeNegative: number;

  @Column('float8')
  thermalTimeLowerLeg: number;

  /** Where each parameter comes from; one that is not named is assumed. */
  @Column('jsonb')
  sources: Partial<Record<UnitParameter, Source>>;

  /** Gauge pressure limits, Pa; null: not entered, so nothing is recommended. */
  @Column('float8', { nullable: true })
  minPressure: number | null;

  @Column('float8', { nullable: true })
  maxPressure: number | null;

  @Column('int', { nullable: true })
  maxSpacers: number | null;

  @Column('int', { default: 1 })
  version: number;
}
