import type { MigrationInterface, QueryRunner } from 'typeorm';
import { createDoor } from './create-door.js';

/**
 * A link into a team or into an account ends with the place of the mechanic who made it: who was taken out of a team must
 * not come back by a link kept for that. Links that were open before nobody is known to have made; they end here.
 */
export class MakersOfLinks1764870000000 implements MigrationInterface {
  name = 'MakersOfLinks1764870000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const table of ['invitation', 'sign_in_link']) {
      await runner.query(`alter table ${table} add created_by uuid`);
      await runner.query(
        `alter table ${table} add constraint ${table}_created_by_fk
         foreign key (created_by) references account (id) on delete cascade`,
      );
    }
    await createDoor(runner, STILL_MECHANIC);
    for (const statement of DOORS) await runner.query(statement);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STILL_MECHANIC = {
  name: 'still_mechanic',
  parameters: 'wanted_account_id uuid, wanted_team_id uuid',
  definition: `returns boolean language sql stable security definer set search_path = public, pg_temp as
    $$ select exists (select from member
         where account_id = wanted_account_id and team_id = wanted_team_id and role = 'mechanic') $$`,
} as const;

/** As they were, but for the maker. */
const DOORS = [
  `create or replace function open_invitation(wanted_token_hash text)
   returns table (team_id uuid, id uuid, role text, rider_id uuid)
   language sql stable security definer set search_path = public, pg_temp as
   $$ select team_id, id, role, rider_id from invitation
      where token_hash = wanted_token_hash and used_at is null and expires_at > now()
        and still_mechanic(created_by, team_id) $$`,
  `create or replace function use_sign_in_link(wanted_token_hash text)
   returns table (account_id uuid, ends_others boolean)
   language sql volatile security definer set search_path = public, pg_temp as
   $$ update sign_in_link set used_at = now()
      where token_hash = wanted_token_hash and used_at is null and expires_at > now() and not sets_password
        and still_mechanic(created_by, team_id)
        and only_rides_in(sign_in_link.account_id, sign_in_link.team_id)
      returning sign_in_link.account_id, sign_in_link.ends_others $$`,
  `create or replace function password_link_is_open(wanted_token_hash text)
   returns boolean language sql stable security definer set search_path = public, pg_temp as
   $$ select exists (select from sign_in_link
        where token_hash = wanted_token_hash and used_at is null and expires_at > now() and sets_password
          and still_mechanic(created_by, team_id)
          and only_in_team(account_id, team_id)) $$`,
  `create or replace function use_password_link(wanted_token_hash text, new_password_hash text)
   returns uuid language plpgsql volatile security definer set search_path = public, pg_temp as
   $$
   declare
     whose uuid;
   begin
     update sign_in_link set used_at = now()
       where token_hash = wanted_token_hash and used_at is null and expires_at > now() and sets_password
         and still_mechanic(created_by, team_id)
         and only_in_team(account_id, team_id)
       returning account_id into whose;
     update account set password_hash = new_password_hash where id = whose;
     delete from sign_in where account_id = whose;
     return whose;
   end
   $$`,
];
