import type { MigrationInterface, QueryRunner } from 'typeorm';
import { createDoor } from './create-door.js';

const ACCOUNT = `nullif(current_setting('app.account_id', true), '')::uuid`;

/**
 * What a password is good for ends with it, to the moment: who was proven right by the old one while it was changed gets
 * nothing for it. And API tokens, which know of no password, can be ended with it, and end with their maker's place.
 */
export class ProvenPasswords1764880000000 implements MigrationInterface {
  name = 'ProvenPasswords1764880000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('drop function set_own_password(text, text)');
    for (const door of DOORS) await createDoor(runner, door);
    for (const statement of TOKENS_OF_MEMBERS) await runner.query(statement);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const DOORS = [
  {
    // Of the account that the transaction acts for. Until its end nobody changes the password: what rests on the proof is
    // stored before the change, which then finds it, or not at all.
    name: 'hold_password',
    parameters: 'proven_password_hash text',
    definition: `returns boolean language sql volatile security definer set search_path = public, pg_temp as
      $$ select exists (select from account
           where id = ${ACCOUNT} and password_hash = proven_password_hash for share) $$`,
  },
  {
    // The account's row first: whoever holds the password is waited for, and their sign-in is then found and ended.
    name: 'set_own_password',
    parameters: 'new_password_hash text, kept_token_hash text, proven_password_hash text',
    definition: `returns boolean language plpgsql volatile security definer set search_path = public, pg_temp as
      $$
      begin
        update account set password_hash = new_password_hash
          where id = ${ACCOUNT} and password_hash = proven_password_hash;
        if not found then return false; end if;
        delete from sign_in where account_id = ${ACCOUNT} and token_hash <> kept_token_hash;
        return true;
      end
      $$`,
  },
  {
    // Of all teams at once: the teams that they are for are the account's.
    name: 'own_tokens',
    parameters: '',
    definition: `returns table (team_id uuid, team_name text, tokens integer)
      language sql stable security definer set search_path = public, pg_temp as
      $$ select team.id, team.name, count(*)::integer
         from api_token
         join team on team.id = api_token.team_id
         where api_token.account_id = ${ACCOUNT} and api_token.revoked_at is null
         group by team.id, team.name order by team.name, team.id $$`,
  },
  {
    name: 'revoke_own_tokens',
    parameters: '',
    definition: `returns void language sql volatile security definer set search_path = public, pg_temp as
      $$ update api_token set revoked_at = now() where account_id = ${ACCOUNT} and revoked_at is null $$`,
  },
] as const;

const TOKENS_OF_MEMBERS = [
  // Those of whom has left already were no use, and would have been again if their maker had come back.
  `update api_token set revoked_at = now()
   where revoked_at is null and not exists (select from member
     where member.team_id = api_token.team_id and member.account_id = api_token.account_id)`,
  `create function end_tokens_of_member() returns trigger language plpgsql
   set search_path = public, pg_temp as $$
   begin
     -- The team itself is being deleted, and its tokens with it.
     if exists (select from team where id = old.team_id) then
       update api_token set revoked_at = now()
         where team_id = old.team_id and account_id = old.account_id and revoked_at is null;
     end if;
     return null;
   end
   $$`,
  `create trigger end_tokens after delete on member for each row execute function end_tokens_of_member()`,
];
