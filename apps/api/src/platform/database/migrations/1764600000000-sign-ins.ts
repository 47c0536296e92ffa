import type { MigrationInterface, QueryRunner } from 'typeorm';
import { createDoor } from './create-door.js';

/** A sign-in that nobody has used for so long has ended: a phone lies in the van between two race weekends. */
const IDLE = `interval '14 days'`;
/** When a sign-in was last used is written down no more often than that: a request must not cost a write. */
const SEEN_EVERY = `interval '10 minutes'`;
/** Failures are forgotten after so much quiet. */
const FORGET = `interval '15 minutes'`;

/** Sign-ins that can be listed and ended one by one, that end when unused, and delays that hold across processes. */
export class SignIns1764600000000 implements MigrationInterface {
  name = 'SignIns1764600000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of STATEMENTS) await runner.query(statement);
    await runner.query('drop function request_scope(text, uuid)');
    for (const door of DOORS) await createDoor(runner, door);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STATEMENTS = [
  `alter table sign_in add id uuid not null default gen_random_uuid()`,
  `alter table sign_in alter id drop default`,
  `alter table sign_in add last_seen_at timestamptz not null default now()`,
  `alter table sign_in add device text not null default 'other'`,
  `alter table sign_in alter device drop default`,
  `drop index sign_in_account`,
  `create unique index sign_in_account on sign_in (account_id, id)`,
  `create table sign_in_try (
    key_hash text not null,
    tries integer not null,
    last_at timestamptz not null,
    constraint sign_in_try_pk primary key (key_hash)
  )`,
  // No policy and no right: the service reaches it by the functions below and not at all otherwise.
  `alter table sign_in_try enable row level security`,
];

const DOORS = [
  {
    name: 'request_scope',
    parameters: 'wanted_token_hash text, wanted_team_id uuid',
    definition: `returns table (account_id uuid, role text, rider_id uuid, is_stale boolean)
      language sql stable security definer set search_path = public, pg_temp as
      $$ select sign_in.account_id, member.role, member.rider_id, sign_in.last_seen_at < now() - ${SEEN_EVERY}
         from sign_in
         left join member on member.account_id = sign_in.account_id and member.team_id = wanted_team_id
         where sign_in.token_hash = wanted_token_hash
           and sign_in.expires_at > now() and sign_in.last_seen_at > now() - ${IDLE} $$`,
  },
  {
    name: 'see_sign_in',
    parameters: 'wanted_token_hash text',
    definition: `returns void language sql volatile security definer set search_path = public, pg_temp as
      $$ update sign_in set last_seen_at = now() where token_hash = wanted_token_hash $$`,
  },
  {
    name: 'end_sign_in',
    parameters: 'wanted_token_hash text',
    definition: `returns void language sql volatile security definer set search_path = public, pg_temp as
      $$ delete from sign_in where token_hash = wanted_token_hash $$`,
  },
  {
    // The try is counted before it is made, under the lock of its row: many at once get no more than one after another.
    name: 'take_try',
    parameters: 'wanted_key text, free_tries integer, first_delay float8, longest_delay float8',
    definition: `returns float8 language plpgsql volatile security definer set search_path = public, pg_temp as
      $$
      declare
        known sign_in_try;
        wait float8;
      begin
        insert into sign_in_try (key_hash, tries, last_at) values (wanted_key, 0, clock_timestamp())
          on conflict do nothing;
        select * into known from sign_in_try where key_hash = wanted_key for update;
        if known.last_at < clock_timestamp() - ${FORGET} then known.tries := 0; end if;
        if known.tries >= free_tries then
          wait := least(first_delay * 2 ^ least(known.tries - free_tries, 30), longest_delay)
            - extract(epoch from clock_timestamp() - known.last_at);
          if wait > 0 then return wait; end if;
        end if;
        update sign_in_try set tries = known.tries + 1, last_at = clock_timestamp() where key_hash = wanted_key;
        return 0;
      end
      $$`,
  },
  {
    name: 'forgive_tries',
    parameters: 'wanted_key text, number integer',
    definition: `returns void language sql volatile security definer set search_path = public, pg_temp as
      $$ update sign_in_try set tries = greatest(tries - number, 0) where key_hash = wanted_key $$`,
  },
] as const;
