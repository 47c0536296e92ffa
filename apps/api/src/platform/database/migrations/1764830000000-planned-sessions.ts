import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';
import { recordChangesOf } from './audited.js';

const TEAM = `nullif(current_setting('app.team_id', true), '')::uuid`;

/** What a team means to ride on a day. */
export class PlannedSessions1764830000000 implements MigrationInterface {
  name = 'PlannedSessions1764830000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of STATEMENTS) await runner.query(statement);
    await recordChangesOf(runner, 'planned_session', 'insert or update or delete', []);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STATEMENTS = [
  `create table planned_session (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    track_id uuid not null,
    day date not null,
    starts_at text not null,
    rider_ids uuid[] not null,
    test_plan_id uuid,
    note text not null default '',
    version integer not null default 1,
    constraint planned_session_pk primary key (team_id, id)
  )`,
  `create index planned_session_day on planned_session (team_id, track_id, day)`,
  `alter table planned_session add constraint planned_session_team_id_fk
   foreign key (team_id) references team (id) on delete cascade`,
  `alter table planned_session add constraint planned_session_track_id_fk
   foreign key (team_id, track_id) references track (team_id, id)`,
  `alter table planned_session add constraint planned_session_test_plan_id_fk
   foreign key (team_id, test_plan_id) references test_plan (team_id, id)`,
  `alter table planned_session enable row level security`,
  `create policy own_team on planned_session to ${APP_ROLE} using (team_id = ${TEAM}) with check (team_id = ${TEAM})`,
  `grant select, insert, update, delete on planned_session to ${APP_ROLE}`,
];
