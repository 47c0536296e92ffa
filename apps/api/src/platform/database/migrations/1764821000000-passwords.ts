import type { MigrationInterface, QueryRunner } from 'typeorm';
import { createDoor } from './create-door.js';

const ACCOUNT = `nullif(current_setting('app.account_id', true), '')::uuid`;

/** Passwords can be changed by who has them, and set anew by a mechanic's single-use link. */
export class Passwords1764821000000 implements MigrationInterface {
  name = 'Passwords1764821000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of STATEMENTS) await runner.query(statement);
    for (const door of DOORS) await createDoor(runner, door);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STATEMENTS = [
  `alter table sign_in_link add sets_password boolean not null default false`,
  `alter table sign_in_link alter sets_password drop default`,
  // A link for a new password is none to sign in with, and the other way round.
  `create or replace function use_sign_in_link(wanted_token_hash text)
   returns table (account_id uuid, ends_others boolean)
   language sql volatile security definer set search_path = public, pg_temp as
   $$ update sign_in_link set used_at = now()
      where token_hash = wanted_token_hash and used_at is null and expires_at > now() and not sets_password
        and only_rides_in(sign_in_link.account_id, sign_in_link.team_id)
      returning sign_in_link.account_id, sign_in_link.ends_others $$`,
];

const DOORS = [
  {
    // Of the account that the transaction acts for, and of no other; every other sign-in of it ends with the password.
    name: 'set_own_password',
    parameters: 'new_password_hash text, kept_token_hash text',
    definition: `returns void language sql volatile security definer set search_path = public, pg_temp as
      $$ delete from sign_in where account_id = ${ACCOUNT} and token_hash <> kept_token_hash;
         update account set password_hash = new_password_hash where id = ${ACCOUNT} $$`,
  },
  {
    // A link made in one team must not open another.
    name: 'only_in_team',
    parameters: 'wanted_account_id uuid, wanted_team_id uuid',
    definition: `returns boolean language sql stable security definer set search_path = public, pg_temp as
      $$ select exists (select from member where account_id = wanted_account_id and team_id = wanted_team_id)
           and not exists (select from member where account_id = wanted_account_id and team_id <> wanted_team_id) $$`,
  },
  {
    // Asked before a password is hashed, which costs more than to be asked.
    name: 'password_link_is_open',
    parameters: 'wanted_token_hash text',
    definition: `returns boolean language sql stable security definer set search_path = public, pg_temp as
      $$ select exists (select from sign_in_link
           where token_hash = wanted_token_hash and used_at is null and expires_at > now() and sets_password
             and only_in_team(account_id, team_id)) $$`,
  },
  {
    // Link, password and the end of every sign-in in one step: none of them without the others.
    name: 'use_password_link',
    parameters: 'wanted_token_hash text, new_password_hash text',
    definition: `returns uuid language plpgsql volatile security definer set search_path = public, pg_temp as
      $$
      declare
        whose uuid;
      begin
        update sign_in_link set used_at = now()
          where token_hash = wanted_token_hash and used_at is null and expires_at > now() and sets_password
            and only_in_team(account_id, team_id)
          returning account_id into whose;
        update account set password_hash = new_password_hash where id = whose;
        delete from sign_in where account_id = whose;
        return whose;
      end
      $$`,
  },
] as const;
