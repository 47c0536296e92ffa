import type { MigrationInterface, QueryRunner } from 'typeorm';
import { recordChangesOf } from './audited.js';
import { announceChangesOf, ownTeam } from './team-table.js';

/** Spacers in stock by recorded movements, instead of a figure at each unit that anybody overwrote. */
export class SpacerStock1764840000000 implements MigrationInterface {
  name = 'SpacerStock1764840000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of STATEMENTS) await runner.query(statement);
    await ownTeam(runner, 'spacer_movement', 'select, insert');
    await recordChangesOf(runner, 'spacer_movement', 'insert or update or delete', []);
    await announceChangesOf(runner, 'spacer_movement', { kind: 'stock' });
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STATEMENTS = [
  `create table spacer_movement (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    unit_kind text not null,
    spacer_size int not null,
    number int not null,
    change int not null,
    in_stock int not null,
    reason text not null,
    note text not null default '',
    entered_by uuid,
    reverses_id uuid,
    constraint spacer_movement_pk primary key (team_id, id),
    constraint spacer_movement_in_stock check (in_stock >= 0)
  )`,
  `create unique index spacer_movement_number on spacer_movement (team_id, unit_kind, spacer_size, number)`,
  `create unique index spacer_movement_reversed on spacer_movement (team_id, reverses_id)`,
  `alter table spacer_movement add constraint spacer_movement_reverses_id_fk
   foreign key (team_id, reverses_id) references spacer_movement (team_id, id)`,
  // Units of one size share a box: the most that one of them claimed, since each may have counted the same.
  `insert into spacer_movement (team_id, id, unit_kind, spacer_size, number, change, in_stock, reason, note)
   select team_id, new_entry_id(), kind, round(spacer_volume * 1e7)::int, 1, max(spacers_in_stock),
          max(spacers_in_stock), 'counted', 'As it was entered at the unit.'
   from spring_unit group by team_id, kind, round(spacer_volume * 1e7)::int having max(spacers_in_stock) > 0`,
  `alter table spring_unit drop column spacers_in_stock`,
];
