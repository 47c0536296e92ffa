import type { MigrationInterface, QueryRunner } from 'typeorm';
import { recordChangesOf } from './audited.js';
import { announceChangesOf, ownTeam } from './team-table.js';

/** What the team enters of a unit's manual, the services done, and riding that no run tells of. */
export class UnitService1764810000000 implements MigrationInterface {
  name = 'UnitService1764810000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of STATEMENTS) await runner.query(statement);
    for (const table of ['unit_care', 'service_entry']) {
      // Appended to and never changed, by nobody under the application's role.
      await ownTeam(runner, table, 'select, insert');
      await recordChangesOf(runner, table, 'insert or update or delete', []);
      await announceChangesOf(runner, table, { kind: 'service' });
    }
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STATEMENTS = [
  `create table unit_care (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    unit_id uuid not null,
    service_interval float8,
    cap_torque float8,
    entered_by uuid not null,
    constraint unit_care_pk primary key (team_id, id)
  )`,
  `create index unit_care_unit on unit_care (team_id, unit_id, id)`,
  `alter table unit_care add constraint unit_care_unit_id_fk
   foreign key (team_id, unit_id) references spring_unit (team_id, id)`,
  `create table service_entry (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    unit_id uuid not null,
    kind text not null,
    day date not null,
    riding float8,
    done_by text not null,
    note text not null default '',
    entered_by uuid not null,
    takes_back_id uuid,
    constraint service_entry_pk primary key (team_id, id)
  )`,
  `create index service_entry_unit on service_entry (team_id, unit_id, id)`,
  `create unique index service_entry_taken_back on service_entry (team_id, takes_back_id)`,
  `alter table service_entry add constraint service_entry_unit_id_fk
   foreign key (team_id, unit_id) references spring_unit (team_id, id)`,
  `alter table service_entry add constraint service_entry_takes_back_id_fk
   foreign key (team_id, takes_back_id) references service_entry (team_id, id)`,
];
