import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';

/** A sign-in that has not ended: the browser holds the token, we hold its hash. */
@Entity('sign_in')
@ForeignKey('account', ['accountId'], ['id'], { onDelete: 'CASCADE' })
@Index('sign_in_account', ['accountId'])
export class SignInEntity {
  @PrimaryColumn('text')
  tokenHash: string;

  @Column('uuid')
  accountId: string;

  @Column('timestamptz', { default: () => 'now()' })
  createdAt: Date;

  @Column('timestamptz')
  expiresAt: Date;
}
