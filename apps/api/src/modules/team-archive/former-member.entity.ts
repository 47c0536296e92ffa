import { Column, Entity, ForeignKey } from 'typeorm';
import { TeamOwned } from '../../platform/database/team-owned.entity.js';
import type { Role } from '../../platform/http/scope.js';

/** A person of the team that an archive was made of. Records name them; they have no place in the team until they join. */
@Entity('former_member')
@ForeignKey('team', ['teamId'], ['id'], { onDelete: 'CASCADE' })
@ForeignKey('rider', ['teamId', 'riderId'], ['teamId', 'id'])
export class FormerMemberEntity extends TeamOwned {
  @Column('text')
  displayName: string;

  @Column('text', { nullable: true })
  email: string | null;

  @Column('text', { nullable: true })
  role: Role | null;

  @Column('uuid', { nullable: true })
  riderId: string | null;
}
