import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';

/** A write that was asked for under a key, and what it was answered. */
@Entity('idempotency')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@Index('idempotency_age', ['teamId', 'createdAt'])
export class IdempotencyEntity {
  @PrimaryColumn('uuid')
  teamId: string;

  @PrimaryColumn('uuid')
  accountId: string;

  @PrimaryColumn('text')
  key: string;

  /** Hash of method, path and body: the same key for another request is an error of the caller. */
  @Column('text')
  fingerprint: string;

  @Column('jsonb', { nullable: true })
  answer: object | null;

  @Column('timestamptz', { default: () => 'now()' })
  createdAt: Date;
}
