import type { MigrationInterface, QueryRunner } from 'typeorm';
import { recordChangesOf } from './audited.js';
import { announceChangesOf, ownTeam } from './team-table.js';

/** Work orders, and their steps as they are done. */
export class WorkOrders1764860000000 implements MigrationInterface {
  name = 'WorkOrders1764860000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of STATEMENTS) await runner.query(statement);
    await ownTeam(runner, 'work_order', 'select, insert');
    await ownTeam(runner, 'work_step', 'select, insert, update (done_at, done_by, movement_id)');
    await recordChangesOf(runner, 'work_order', 'insert or update or delete', []);
    // The steps are made with their order; a tick is somebody's doing.
    await recordChangesOf(runner, 'work_step', 'update', []);
    await announceChangesOf(runner, 'work_order', { kind: 'work', bike: 'bike_id' });
    await announceChangesOf(runner, 'work_step', { kind: 'work' });
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STATEMENTS = [
  `create table work_order (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    bike_id uuid not null,
    from_setup_id uuid,
    to_setup_id uuid not null,
    made_by uuid not null,
    constraint work_order_pk primary key (team_id, id)
  )`,
  `create index work_order_bike on work_order (team_id, bike_id, id)`,
  `create unique index work_order_setup on work_order (team_id, to_setup_id)`,
  `alter table work_order add constraint work_order_bike_id_fk
   foreign key (team_id, bike_id) references bike (team_id, id)`,
  `alter table work_order add constraint work_order_from_setup_id_fk
   foreign key (team_id, from_setup_id) references setup (team_id, id)`,
  `alter table work_order add constraint work_order_to_setup_id_fk
   foreign key (team_id, to_setup_id) references setup (team_id, id)`,
  `create table work_step (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    work_order_id uuid not null,
    position int not null,
    "end" text not null,
    step text not null,
    done_at timestamptz,
    done_by uuid,
    movement_id uuid,
    constraint work_step_pk primary key (team_id, id)
  )`,
  `create unique index work_step_place on work_step (team_id, work_order_id, position)`,
  `create index work_step_movement on work_step (team_id, movement_id)`,
  `alter table work_step add constraint work_step_work_order_id_fk
   foreign key (team_id, work_order_id) references work_order (team_id, id)`,
  `alter table work_step add constraint work_step_movement_id_fk
   foreign key (team_id, movement_id) references spacer_movement (team_id, id)`,
];
