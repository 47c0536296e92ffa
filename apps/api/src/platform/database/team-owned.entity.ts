import { Column, PrimaryColumn } from 'typeorm';

/** What every row that belongs to a team starts with: the team is the first part of every key. */
export abstract class TeamOwned {
  @PrimaryColumn('uuid')
  teamId: string;

  /** UUID of version 7: made by us, and in the order of making, so that lists can page by it. */
  @PrimaryColumn('uuid')
  id: string;

  @Column('timestamptz', { default: () => 'now()' })
  createdAt: Date;
}
