import { Column, Entity, Index, PrimaryColumn } from 'typeorm';

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

  @Column('timestamptz', { default: () => 'now()' })
  createdAt: Date;
}
