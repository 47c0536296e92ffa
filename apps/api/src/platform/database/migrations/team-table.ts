import type { QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';

const TEAM = `nullif(current_setting('app.team_id', true), '')::uuid`;

/** Makes a new table a team's own: its key to the team, the policy that shows no other team's rows, and the rights. */
export async function ownTeam(runner: QueryRunner, table: string, rights: string): Promise<void> {
  await runner.query(
    `alter table ${table} add constraint ${table}_team_id_fk
     foreign key (team_id) references team (id) on delete cascade`,
  );
  await runner.query(`alter table ${table} enable row level security`);
  await runner.query(
    `create policy own_team on ${table} to ${APP_ROLE} using (team_id = ${TEAM}) with check (team_id = ${TEAM})`,
  );
  await runner.query(`grant ${rights} on ${table} to ${APP_ROLE}`);
}

/** Lets the database announce what changes in a table, as `kind`, and whose it is where columns name it. */
export async function announceChangesOf(
  runner: QueryRunner,
  table: string,
  { kind, bike = '', rider = '' }: { kind: string; bike?: string; rider?: string },
): Promise<void> {
  await runner.query(
    `create trigger announce_change after insert or update on ${table}
     for each row execute function announce_change('${kind}', '${bike}', '${rider}')`,
  );
}
