import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';

/** What the application's role may do with each table. Columns in brackets: only these may change. */
const RIGHTS: Readonly<Record<string, string>> = {
  test_plan: 'select, insert, update (closed_at, closed_by, closing_note, version)',
  test_plan_arm: 'select, insert',
  planned_run: 'select, insert, update (run_id, dropped_at)',
};

const TEAM = `nullif(current_setting('app.team_id', true), '')::uuid`;

/** Test plans: what was planned stays as it was; runs are attached, and the rest may be ordered anew. */
export class TestPlans1764100000000 implements MigrationInterface {
  name = 'TestPlans1764100000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [...TABLES, ...KEYS]) await runner.query(statement);
    for (const [table, rights] of Object.entries(RIGHTS)) {
      await runner.query(`alter table ${table} enable row level security`);
      await runner.query(
        `create policy own_team on ${table} to ${APP_ROLE} using (team_id = ${TEAM}) with check (team_id = ${TEAM})`,
      );
      await runner.query(`grant ${rights} on ${table} to ${APP_ROLE}`);
    }
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const TABLES = [
  `create table test_plan (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    name text not null,
    track_id uuid not null,
    session_id uuid,
    day date,
    margin float8 not null,
    trend text not null,
    seed integer not null,
    blind boolean not null,
    looks text not null,
    warm_ups integer not null,
    runs_an_arm integer not null,
    made jsonb not null,
    scatter jsonb,
    created_by uuid not null,
    closed_at timestamptz,
    closed_by uuid,
    closing_note text,
    version integer not null default 1,
    constraint test_plan_pk primary key (team_id, id)
  )`,
  `create index test_plan_track on test_plan (team_id, track_id, id)`,
  `create table test_plan_arm (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    plan_id uuid not null,
    name text not null,
    letter text not null,
    "current" boolean not null,
    bike_id uuid not null,
    setup_id uuid not null,
    constraint test_plan_arm_pk primary key (team_id, id)
  )`,
  `create unique index test_plan_arm_letter on test_plan_arm (team_id, plan_id, letter, bike_id)`,
  `create table planned_run (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    plan_id uuid not null,
    rider_id uuid not null,
    arm_id uuid not null,
    kind text not null,
    "position" integer not null,
    run_id uuid,
    dropped_at timestamptz,
    constraint planned_run_pk primary key (team_id, id)
  )`,
  `create index planned_run_place on planned_run (team_id, plan_id, rider_id, "position")`,
  `create unique index planned_run_run on planned_run (team_id, run_id)`,
];

const reference = (table: string, column: string, target: string): string =>
  `alter table ${table} add constraint ${table}_${column}_fk
   foreign key (team_id, ${column}) references ${target} (team_id, id)`;

const ofTeam = (table: string): string =>
  `alter table ${table} add constraint ${table}_team_id_fk
   foreign key (team_id) references team (id) on delete cascade`;

const KEYS = [
  ofTeam('test_plan'),
  reference('test_plan', 'track_id', 'track'),
  `alter table test_plan add constraint test_plan_session_id_track_id_fk
   foreign key (team_id, session_id, track_id) references session (team_id, id, track_id)`,
  ofTeam('test_plan_arm'),
  reference('test_plan_arm', 'plan_id', 'test_plan'),
  reference('test_plan_arm', 'bike_id', 'bike'),
  reference('test_plan_arm', 'setup_id', 'setup'),
  ofTeam('planned_run'),
  reference('planned_run', 'plan_id', 'test_plan'),
  reference('planned_run', 'arm_id', 'test_plan_arm'),
  reference('planned_run', 'rider_id', 'rider'),
  reference('planned_run', 'run_id', 'run'),
];
