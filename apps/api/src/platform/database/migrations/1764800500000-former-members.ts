import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';
import { recordChangesOf } from './audited.js';

const TEAM = `nullif(current_setting('app.team_id', true), '')::uuid`;

/** Who belonged to the team where its archive was made: named in records, and nobody here. */
export class FormerMembers1764800500000 implements MigrationInterface {
  name = 'FormerMembers1764800500000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of STATEMENTS) await runner.query(statement);
    await recordChangesOf(runner, 'former_member', 'insert or update or delete', []);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STATEMENTS = [
  `create table former_member (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    display_name text not null,
    email text,
    role text,
    rider_id uuid,
    constraint former_member_pk primary key (team_id, id)
  )`,
  `alter table former_member add constraint former_member_team_id_fk
   foreign key (team_id) references team (id) on delete cascade`,
  `alter table former_member add constraint former_member_rider_id_fk
   foreign key (team_id, rider_id) references rider (team_id, id)`,
  `alter table former_member enable row level security`,
  `create policy own_team on former_member to ${APP_ROLE} using (team_id = ${TEAM}) with check (team_id = ${TEAM})`,
  `grant select, insert on former_member to ${APP_ROLE}`,
];
