import { Column, Entity, PrimaryColumn } from 'typeorm';

/** How often somebody has lately tried what is worth guessing. Reached by functions only. */
@Entity('sign_in_try')
export class SignInTryEntity {
  /** Hash of who tries what: neither addresses nor e-mail addresses are kept. */
  @PrimaryColumn('text')
  keyHash: string;

  @Column('int')
  tries: number;

  @Column('timestamptz')
  lastAt: Date;
}
