import { Column, Entity, Index, PrimaryColumn } from 'typeorm';
import type { AccountUnits } from './account-units.js';

/** A person who can sign in. Belongs to no team; membership is a row of its own. */
@Entity('account')
@Index('account_email', ['email'], { unique: true })
export class AccountEntity {
  @PrimaryColumn('uuid')
  id: string;

  /** In lower case, so that one address is one account. */
  @Column('text')
  email: string;

  @Column('text')
  displayName: string;

  /** argon2id in the PHC string format. */
  @Column('text')
  passwordHash: string;

  @Column('text', { default: 'psi' })
  pressureUnit: AccountUnits['pressure'];

  @Column('text', { default: 'kg' })
  massUnit: AccountUnits['mass'];

  @Column('text', { default: '°C' })
  temperatureUnit: AccountUnits['temperature'];

  /** Of the units. */
  @Column('int', { default: 1 })
  version: number;

  @Column('timestamptz', { default: () => 'now()' })
  createdAt: Date;
}
