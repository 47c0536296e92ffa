import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';

const TEAM = `nullif(current_setting('app.team_id', true), '')::uuid`;

/**
 * Baselines tell grounds and weather apart, and name the runs behind them. Stored fits knew no ground: they are made
 * again by themselves.
 */
export class BaselineVenue1764200000000 implements MigrationInterface {
  name = 'BaselineVenue1764200000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of STATEMENTS) await runner.query(statement);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STATEMENTS = [
  `alter table baseline add column condition text not null default 'dry'`,
  `alter table baseline alter column condition drop default`,
  `alter table baseline add column air_temperature float8`,
  `alter table baseline add column station_pressure float8`,
  `create table baseline_runs (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    evidence_version integer not null,
    run_ids uuid array not null,
    constraint baseline_runs_pk primary key (team_id, id)
  )`,
  `create unique index baseline_runs_evidence on baseline_runs (team_id, evidence_version)`,
  `alter table baseline_runs add constraint baseline_runs_team_id_fk
   foreign key (team_id) references team (id) on delete cascade`,
  `alter table baseline_runs enable row level security`,
  `create policy own_team on baseline_runs to ${APP_ROLE} using (team_id = ${TEAM}) with check (team_id = ${TEAM})`,
  `grant select, insert on baseline_runs to ${APP_ROLE}`,
  `delete from demand_fit`,
];
